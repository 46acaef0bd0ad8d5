import { groundAt, holeLines, holeRoom } from '../../board/cut/hole-room.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { houseRule } from '../source.ts';
import { gees, kilograms, lengthIn, modeHertz } from '../words.ts';

const boardSpot = (id: string, ...below: readonly string[]): Spot => ({
  path: pointer(['boards', id, ...below]),
});

function boardOf(job: Job, id: string): Board | undefined {
  return job.boards.find((board) => board.id === id);
}

const narrowWeb: Rule = {
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
function holeRooms(board: PlanBoard) {
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

const holeOff: Rule = {
  id: 'hole-off-board',
  judge(about) {
    return about.plan.boards.flatMap((board) =>
      holeRooms(board).flatMap(({ hole, ground, toEdgeM }): Verdict<'hole-off-board'>[] => {
        if (toEdgeM >= -1e-9) return [];
        const length = lengthIn(about.job, boardSpot(board.id));
        const where = {
          material: `breaks out over the edge by ${length(-toEdgeM)}`,
          'cut-out': `stands in a cut-out, its rim ${length(-toEdgeM)} past the edge of it`,
          outside: `stands outside the outline, its rim ${length(-toEdgeM)} past the edge`,
        }[ground];
        return [
          {
            level: 'stop',
            of: [hole.of, holeName(board.id, hole.n), board.id],
            message: `hole ${hole.n} of ${board.id} (${hole.purpose}, ${hole.of}) ${where}: no board holds there`,
            value: toEdgeM,
            limit: 0,
            unit: 'm',
            remedy:
              hole.purpose === 'fixing'
                ? 'use another sound point, move the board in its space, or make it larger there'
                : 'move what it is for, or leave the cut-out out',
            givesWayTo: ['mounting-hole-off-board'],
            ...holeSpot(about, board.id, hole.of),
          },
        ];
      }),
    );
  },
};

const holeEdge: Rule = {
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

const holeCorner: Rule = {
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

/**
 * First natural frequency (Hz) of a board: the lower of what the plan gives and of f = 15.8 / sqrt(sag in mm), the
 * sag of one mass on a spring under its own weight (sqrt(g / sag) / (2 pi)), so that both rules agree.
 */
export function lowestModeHz({ firstModeHz, sagM }: Pick<PlanBoard, 'firstModeHz' | 'sagM'>): number | null {
  const fromSag = sagM !== null && sagM > 0 ? [15.8 / Math.sqrt(sagM * 1000)] : [];
  const known = [...(firstModeHz === null ? [] : [firstModeHz]), ...fromSag];
  return known.length === 0 ? null : Math.min(...known);
}

const firstMode: Rule = {
  id: 'first-mode-low',
  judge({ job, plan }) {
    const least = houseRule(job, 'first-mode');
    const bass = houseRule(job, 'first-mode-bass');
    const length = lengthIn(job);
    return plan.boards.flatMap((board): Verdict<'first-mode-low'>[] => {
      const value = lowestModeHz(board);
      const beside = boardOf(job, board.id)?.space['beside-subwoofer'] ?? false;
      const verdict = {
        of: [board.id],
        remedy: 'use a thicker or stiffer sheet, add a rib, or a fixing near the heaviest part',
        ...boardSpot(board.id),
      };
      if (value === null)
        return board.fixings.length === 0
          ? []
          : [
              {
                ...verdict,
                level: 'note',
                message: `the stiffness of ${board.id} on its fixings is not known`,
                remedy: 'press on the middle of the loaded board: it must not give under a thumb',
                ...least.from,
              },
            ];
      const stops = value < least.value - 1e-9;
      if (!stops && !(beside && value < bass.value - 1e-9)) return [];
      const { value: limit, from } = stops ? least : bass;
      const sag = board.sagM === null ? '' : `, it sags ${length(board.sagM)}`;
      return [
        {
          ...verdict,
          level: stops ? 'stop' : 'caution',
          message: `the first natural frequency of ${board.id} is ${modeHertz(value)}${sag}; ${modeHertz(limit)} is the least${stops ? '' : ' beside a subwoofer'}`,
          value,
          limit,
          unit: 'Hz',
          ...from,
        },
      ];
    });
  },
};

const retention: Rule = {
  id: 'retention-low',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'retention');
    return plan.boards.flatMap((board): Verdict<'retention-low'>[] => {
      const { id, retentionG, fixings, loadedMassKg } = board;
      if (fixings.length === 0 || (retentionG !== null && retentionG >= limit)) return [];
      const known = retentionG !== null;
      return [
        {
          level: known ? 'caution' : 'note',
          of: [id, ...fixings.map((fixing) => fixing.id)],
          message: known
            ? `the fixings of ${id} hold ${gees(retentionG)} of its ${kilograms(loadedMassKg)}; ${gees(limit)} is asked for`
            : `what the fixings of ${id} hold is not known; ${gees(limit)} of its ${kilograms(loadedMassKg)} is asked for`,
          ...(known && { value: retentionG }),
          limit,
          unit: 'g',
          remedy: known
            ? 'add fixings, or stronger ones, on sound points'
            : 'write holds: in the part of each fixing, and insert: welded at a point that is no rivet nut',
          ...from,
          ...boardSpot(id, 'fixings'),
        },
      ];
    });
  },
};

const creeps: Rule = {
  id: 'board-creeps',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'sag-creep');
    return plan.boards.flatMap(({ id, sheet, sagCreptM }): Verdict<'board-creeps'>[] => {
      if (sagCreptM === null || sagCreptM <= limit + 1e-9) return [];
      const length = lengthIn(job, boardSpot(id));
      return [
        {
          level: 'caution',
          of: [id, sheet],
          message: `${id} lies, and ${sheet} goes on bending under load: it comes to sag ${length(sagCreptM)}; ${length(limit)} is the most`,
          ...{ value: sagCreptM, limit, unit: 'm' },
          remedy: 'take plywood or aluminium, a thicker sheet, or a fixing near the heaviest part',
          ...from,
          ...boardSpot(id, 'sheet'),
        },
      ];
    });
  },
};

const heldByTrim: Rule = {
  id: 'held-by-trim',
  judge({ plan }: Case) {
    return plan.boards.flatMap(({ id, space, fixings }): Verdict<'held-by-trim'>[] => {
      if (fixings.length > 0) return [];
      return [
        {
          level: 'stop',
          of: [id],
          message: `${id} has no fixing: trim and carpet alone would hold it in ${space}`,
          remedy: 'write fixings: at sound points of the space',
          ...boardSpot(id, 'fixings'),
        },
      ];
    });
  },
};

export const mountingRules: readonly Rule[] = [
  heldByTrim,
  narrowWeb,
  firstMode,
  retention,
  creeps,
  holeOff,
  holeEdge,
  holeCorner,
];
