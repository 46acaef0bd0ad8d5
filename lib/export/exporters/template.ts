import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { fileName } from '../exported-file.ts';
import { type Exporter, issueText } from '../exporter.ts';
import { templateHtml } from '../template/template-html.ts';

/** A full-size paper template of each board, tiled on the shop's paper. */
export const template: Exporter = {
  title: 'full-size paper template of each board, tiled',
  files: ({ plan, metrics, choices: { paper } }) =>
    plan.boards.map((board) => ({
      name: fileName(`template-${board.id}-${paper.toLowerCase()}`, 'html'),
      content: templateHtml(board, paper, metrics, { issue: issueText(plan), mark: sheetMark(plan) }),
    })),
};
