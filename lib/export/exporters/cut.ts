import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { fileName } from '../exported-file.ts';
import { type Exporter, originText } from '../exporter.ts';
import { machineSvg } from '../machine/machine-svg.ts';

/** Each board as SVG at full size for a router or laser. */
export const cut: Exporter = {
  title: 'SVG of each board at 1:1, groups cut, drill, engrave',
  files: ({ plan }) =>
    plan.boards.map((board) => ({
      name: fileName(`board-${board.id}-full-size`, 'svg'),
      content: machineSvg(board, [originText(plan, sheetMark(plan))]),
    })),
};
