import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { fileName } from '../exported-file.ts';
import { type Exporter, originText } from '../exporter.ts';
import { dxfText } from '../machine/dxf.ts';
import { machinePaths } from '../machine/machine-paths.ts';

/** Each board as DXF for a router or laser. */
export const dxf: Exporter = {
  title: 'DXF of each board, layers CUT, DRILL, ENGRAVE',
  files: ({ plan, choices: { unit } }) =>
    plan.boards.map((board) => ({
      name: fileName(`board-${board.id}-${unit}`, 'dxf'),
      content: dxfText(machinePaths(board), unit, [
        originText(plan, sheetMark(plan)),
        `Board ${board.id}, ${unit}, origin at the datum, seen from the mounting side`,
      ]),
    })),
};
