import { boardCentroid, centreOfMass } from '../../board/area-and-mass.ts';
import { bodyOf } from '../../board/layout/item.ts';
import { type HeldMass, retention, retentionFaults } from '../../board/strength/retention.ts';
import type { Stiffness } from '../../board/strength/stiffness.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import type { GrainWay } from '../../model/outline.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { PlanBook } from '../plan-book.ts';
import type { BoardFixing } from './board-shape.ts';
import { planStiffness } from './board-stiffness.ts';
import { modeLimits } from './first-mode-limits.ts';
import type { PlannedJoint } from './fixing-joints.ts';
import type { LaidBoard } from './laid-board.ts';
import { countedRibs, type PlannedRibs, ribMasses } from './ribs/plan-ribs.ts';

/** What the physics of a board follows from; `bareKg`: its mass without parts and ribs. */
export interface HeldBoard {
  readonly laid: LaidBoard;
  readonly fixings: readonly BoardFixing[];
  readonly joints: readonly PlannedJoint[];
  readonly ribbing: PlannedRibs;
  readonly bareKg: number;
}

/** How a board holds: centre of gravity, sag, first mode, what its fixings stand. */
export function boardPhysics(
  job: Job,
  { laid, fixings, joints, ribbing, bareKg }: HeldBoard,
  book: PlanBook,
  keep: Keep,
) {
  const { board } = laid;
  const { given } = board;
  const at = `boards.${board.id}`;
  const stiffness = planStiffness(job, laid, fixings, countedRibs(job, board, ribbing), keep);
  const masses = [...heldMasses(laid, bareKg), ...ribMasses(board, ribbing)];
  const rated = joints.flatMap(({ rated: one }) => one ?? []);
  const held = rated.length === fixings.length ? retention(masses, rated) : null;
  const retentionRemarks =
    rated.length === fixings.length ? retentionFaults(board.id, held, job.rules.retention.value) : [];
  if (stiffness && given.outline.grain === undefined && stiffness.grain !== null)
    book.trace(`${at}.grain`, grainTrace(stiffness.grain, modeLimits(job, board).wantedHz));
  return {
    centre: centreOfMass(masses),
    stiffness,
    faults: retentionRemarks,
    numbers: {
      sagM: stiffness ? book.trace(`${at}.sagM`, stiffness.sagM) : null,
      firstModeHz: stiffness ? book.trace(`${at}.firstModeHz`, stiffness.firstModeHz) : null,
      sagCreptM: creptM(board, stiffness, at, book),
      retentionG: held ? book.trace(`${at}.retentionG`, held.retentionG) : null,
    },
  };
}

/** Sag of a board that lies once its sheet has crept; null of one that stands, or does not creep. */
function creptM(
  { sheet, space }: LaidBoard['board'],
  stiffness: Stiffness | null,
  at: string,
  book: PlanBook,
): number | null {
  const lasting = sheet['long-term-modulus'];
  const stands = [space.right, space.upward].some((way) => way === 'up' || way === 'down');
  if (!stiffness || lasting === undefined || stands) return null;
  return book.trace(
    `${at}.sagCreptM`,
    traced((stiffness.sagM.value * sheet.modulus) / lasting, 'm', {
      rule: 'board-sag-crept',
      formula: 'sag x modulus / long-term modulus',
      citation: "linear creep, textbooks of plastics; the part's data",
      inputs: [
        ['sag', stiffness.sagM.value, 'm'],
        ['modulus', sheet.modulus, 'Pa'],
        ['long-term modulus', lasting, 'Pa'],
      ],
    }),
  );
}

/** Why the plan asks for a way of the grain that the job leaves open. */
function grainTrace(grain: GrainWay, wantedHz: number): Traced<GrainWay> {
  return traced(grain, '', {
    rule: 'board-grain',
    formula: 'the stiffer way that comes out of the sheet, where the weaker one has too low a first mode',
    citation: 'the first mode of the board with its grain each way',
    inputs: [['first mode asked for', wantedHz, 'Hz']],
  });
}

function heldMasses({ board, shape, items, placements }: LaidBoard, massKg: number): HeldMass[] {
  const thicknessM = board.sheet.thickness;
  const own: HeldMass = { id: board.id, massKg, zM: thicknessM / 2, ...boardCentroid(shape) };
  return [
    own,
    ...placements.flatMap((at): HeldMass[] => {
      const item = items.find(({ id }) => id === at.item);
      if (!item) return [];
      const body = bodyOf(item, at);
      return [
        {
          id: item.id,
          massKg: item.massKg,
          xM: (body.minX + body.maxX) / 2,
          yM: (body.minY + body.maxY) / 2,
          zM: thicknessM + (body.minZ + body.maxZ) / 2,
        },
      ];
    }),
  ];
}
