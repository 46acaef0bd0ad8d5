import { groundAt, holeLines, holeRoom } from '../../board/cut/hole-room.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceOf, deviceSpot, spaceSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';
import { boardOf, boardSpot } from './board-spot.ts';

export const narrowWeb: Rule = {
  id: 'narrow-web',
  judge({ job, plan }) {
    const good = houseRule(job, 'web-good');
    const least = houseRule(job, 'web-limit');
    return plan.boards.flatMap(({ id, narrowestWebM }): Verdict<'narrow-web'>[] => {
      if (narrowestWebM === null || narrowestWebM >= good.value - 1e-9) return [];
      const stops = narrowestWebM < least.value - 1e-9;
      const { value: limit, from } = stops ? least : good;
      const length = lengthIn(job, boardSpot(id, 'outline'));
      return [
        {
          level: stops ? 'stop' : 'caution',
          of: [id],
          message: `the narrowest web of ${id} is ${length(narrowestWebM)}; ${length(limit)} is ${stops ? 'the least' : 'good'}`,
          value: narrowestWebM,
          limit,
          unit: 'm',
          remedy: 'move the cuts apart, or make one smaller',
          ...from,
          ...boardSpot(id, 'outline'),
        },
      ];
    });
  },
};

/** The holes of the drill table, each with its room to the edges and to the corners (m). */
export function holeRooms(board: PlanBoard) {
  const lines = holeLines(board);
  return board.holes.map((hole) => ({ hole, ground: groundAt(hole, lines), ...holeRoom(hole, lines) }));
}

/** A hole as a sheet names it. */
const holeName = (board: string, n: number): string => `${board} hole ${n}`;

/** Where what a hole is for was written: a fixing of the board, a device, else the board. */
function holeSpot({ job }: Case, board: string, of: string): Spot {
  if (Object.hasOwn(boardOf(job, board)?.given.fixings ?? {}, of)) return boardSpot(board, 'fixings', of);
  return deviceOf(job, of) ? deviceSpot(job, of, 'at') : boardSpot(board);
}

/** The edge of a board that a place lies nearest to, or furthest beyond. */
function edgeNextTo({ outline }: PlanBoard, { xM, yM }: { readonly xM: number; readonly yM: number }) {
  const [xs, ys] = [outline.map((corner) => corner.xM), outline.map((corner) => corner.yM)];
  const rooms = [
    { edge: 'left', roomM: xM - Math.min(...xs) },
    { edge: 'right', roomM: Math.max(...xs) - xM },
    { edge: 'bottom', roomM: yM - Math.min(...ys) },
    { edge: 'top', roomM: Math.max(...ys) - yM },
  ] as const;
  return rooms.reduce((nearest, one) => (one.roomM < nearest.roomM ? one : nearest)).edge;
}

/** The sound point of a fixing as the vehicle's file has it; null where it has none. */
function pointText(
  job: Job,
  board: string,
  fixing: string,
): { readonly id: string; readonly text: string } | null {
  const own = boardOf(job, board);
  const id = own?.given.fixings[fixing]?.point;
  const spot = id === undefined ? undefined : own?.space['sound-points'][id];
  if (!own || id === undefined || !spot) return null;
  const length = lengthIn(job, spaceSpot(own, 'sound-points', id));
  return { id, text: `${id}, x: ${length(spot.x)} and y: ${length(spot.y)} in ${own.spaceId}` };
}

function offBoardRemedy(
  board: string,
  ground: ReturnType<typeof groundAt>,
  edge: string,
  point: string | undefined,
): string {
  const grow =
    ground === 'cut-out'
      ? 'move the cut-out or leave it out'
      : `make ${board} larger at its ${edge} or write another at: for it`;
  return point === undefined
    ? `move what it is for, or ${grow}`
    : `measure ${point} anew and mend its x: and y: in the vehicle's file where they are wrong; else ${grow}, or use another sound point`;
}

export const holeOff: Rule = {
  id: 'hole-off-board',
  judge(about) {
    return about.plan.boards.flatMap((board) =>
      holeRooms(board).flatMap(({ hole, ground, toEdgeM }): Verdict<'hole-off-board'>[] => {
        if (toEdgeM >= -1e-9) return [];
        const length = lengthIn(about.job, boardSpot(board.id));
        const edge = ground === 'cut-out' ? 'edge' : `${edgeNextTo(board, hole)} edge`;
        const where = {
          material: `breaks out over the ${edge} by ${length(-toEdgeM)}`,
          'cut-out': `stands in a cut-out, its rim ${length(-toEdgeM)} past the edge of it`,
          outside: `stands outside the outline, its rim ${length(-toEdgeM)} past the ${edge}`,
        }[ground];
        const point = hole.purpose === 'fixing' ? pointText(about.job, board.id, hole.of) : null;
        return [
          {
            level: 'stop',
            of: [hole.of, holeName(board.id, hole.n), board.id],
            message: `hole ${hole.n} of ${board.id} (${hole.purpose}, ${hole.of}${point === null ? '' : ` at ${point.text}`}) ${where}: no board holds there`,
            value: toEdgeM,
            limit: 0,
            unit: 'm',
            remedy: offBoardRemedy(board.id, ground, edge, point?.id),
            givesWayTo: ['mounting-hole-off-board'],
            ...holeSpot(about, board.id, hole.of),
          },
        ];
      }),
    );
  },
};

export const holeEdge: Rule = {
  id: 'hole-near-edge',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'hole-edge');
    return plan.boards.flatMap((board) =>
      holeRooms(board).flatMap(({ hole, toEdgeM }): Verdict<'hole-near-edge'>[] => {
        if (toEdgeM >= limit - 1e-9 || toEdgeM < -1e-9) return [];
        const length = lengthIn(job, boardSpot(board.id));
        return [
          {
            level: 'caution',
            of: [hole.of, holeName(board.id, hole.n), board.id],
            message: `the rim of hole ${hole.n} of ${board.id} (${hole.purpose}, ${hole.of}) is ${length(toEdgeM)} from the edge; ${length(limit)} is the least`,
            value: toEdgeM,
            limit,
            unit: 'm',
            remedy: 'move what it is for inwards, or drill smaller',
            ...from,
            ...boardSpot(board.id),
          },
        ];
      }),
    );
  },
};

export const holeCorner: Rule = {
  id: 'hole-near-corner',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'hole-corner');
    return plan.boards
      .filter(({ material }) => material === 'fibreboard')
      .flatMap((board) =>
        holeRooms(board).flatMap(({ hole, toCornerM }): Verdict<'hole-near-corner'>[] => {
          if (toCornerM >= limit - 1e-9) return [];
          const length = lengthIn(job, boardSpot(board.id));
          return [
            {
              level: 'caution',
              of: [hole.of, holeName(board.id, hole.n), board.id],
              message: `the rim of hole ${hole.n} of ${board.id} (${hole.purpose}, ${hole.of}) is ${length(toCornerM)} from a corner; fibreboard splits under ${length(limit)}`,
              value: toCornerM,
              limit,
              unit: 'm',
              remedy: 'move what it is for inwards, or take plywood',
              ...from,
              ...boardSpot(board.id),
            },
          ];
        }),
      );
  },
};
