import type { PlanBoard } from '../../lib/model/plan/index.ts';
import { shapeOf } from '../board/shapes.ts';
import { sampleBoard } from '../publish/sample/sample-board.ts';

/** The board of the sample plan with another outline and the given changes. */
export function boardOf(outline: unknown, change: Partial<PlanBoard> = {}): PlanBoard {
  const [board] = sampleBoard().boards;
  if (!board) throw new Error('the sample plan has no board');
  const shape = shapeOf(outline);
  return {
    ...board,
    outline: shape.outline.map((corner) => ({ ...corner })),
    cutouts: shape.cutouts.map((loop) => loop.map((corner) => ({ ...corner }))),
    ...change,
  };
}

/** A board with rounded corners, a notch, a slot and a window, and a hole of unknown diameter. */
export function roundedBoard(): PlanBoard {
  return boardOf(
    {
      rectangle: { width: '600 mm', height: '400 mm' },
      cuts: [
        { cut: 'arc-corner', radius: '30 mm' },
        { cut: 'notch', edge: 'bottom', offset: '200 mm', width: '80 mm', depth: '50 mm' },
        { cut: 'slot', x: '450 mm', y: '200 mm', length: '90 mm', width: '20 mm', turn: '30 deg' },
        {
          cut: 'window',
          from: 'lower-left',
          x: '150 mm',
          y: '200 mm',
          width: '100 mm',
          height: '60 mm',
          radius: '8 mm',
        },
      ],
    },
    {
      holes: [
        hole(1, 0.025, 0.05, 0.0066),
        hole(2, 0.3, 0.3, 0.0028),
        { ...hole(3, 0.5, 0.3, 0), purpose: 'fixing' },
      ],
    },
  );
}

function hole(n: number, xM: number, yM: number, diameterM: number): PlanBoard['holes'][number] {
  return {
    n,
    xM,
    yM,
    diameterM,
    depthM: null,
    pilotFor: null,
    purpose: 'mounting',
    of: `item-${n}`,
    behind: null,
  };
}
