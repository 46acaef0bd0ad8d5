import type { HoleToDrill } from '../../../board/cut/drill.ts';
import type { BoardRemark } from '../../../board/remark.ts';
import type { Point } from '../../../board/shape/point.ts';
import type { Region } from '../../../board/shape/region.ts';
import { type Rib, ribBending } from '../../../board/strength/plate.ts';
import type { HeldMass } from '../../../board/strength/retention.ts';
import { flangeWidthM, ribLengthM } from '../../../board/strength/rib.ts';
import { ribFaults } from '../../../board/strength/rib-check.ts';
import { openHoles, type RibLimits, ribRoomM } from '../../../board/strength/rib-limits.ts';
import { quarterTurned } from '../../../board/strength/sheet-stiffness.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import type { PlanHole, PlanRib } from '../../../model/plan/index.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import type { PlanBook } from '../../plan-book.ts';
import { plateSheet, stripModulus } from '../sheets/sheet-build.ts';
import { type RibbedBoard, ribLimits, type StandingRib, standingRibs } from './board-ribs.ts';
import { apartM, ribGlue, ribScrew, screwPoints, takesGlue } from './rib-fastening.ts';

/** A rib of the plan, and the holes through the board that its screws take. */
export interface FastenedRib {
  readonly rib: PlanRib;
  readonly screws: readonly (Point & { readonly diameterM: number })[];
}

/** The ribs of a board with their screws, their mass and what they add to its stiffness. */
function fastenRibs(
  job: Job,
  board: Board,
  ribs: readonly StandingRib[],
  ground: RibLimits,
  holes: readonly PlanHole[],
): FastenedRib[] {
  return ribs.map((rib): FastenedRib => {
    const screw = ribScrew(job, board.sheet.thickness, rib, rib.sheet);
    const holeM = screw?.part.clearance ?? 0;
    const screws = screw ? screwPoints(rib, holeM, holes, job.rules) : [];
    const faults = ribFaults(rib, ground, ribs);
    const isSound = rib.section !== null && faults.every(({ level }) => level !== 'stop');
    return {
      rib: {
        ...ribFacts(rib),
        roomM: ribRoomM(rib, ground),
        screw:
          screw && screws.length > 0
            ? { part: screw.id, count: screws.length, apartM: apartM(rib, job.rules) }
            : null,
        glue: rib.joint === 'glued' ? ribGlue(job) : null,
        bendingNm2: isSound ? leastBending(job, board, ribBend(job, board, rib, ground)) : null,
      },
      screws: screws.map((at) => ({ ...at, diameterM: holeM })),
    };
  });
}

function ribFacts(rib: StandingRib): Omit<PlanRib, 'roomM' | 'screw' | 'glue' | 'bendingNm2'> {
  const { id, face, from, to, widthM, heightM, joint, sheetId, sheet, section, ends } = rib;
  const lengthM = ribLengthM(rib);
  return {
    ...{ id, face, from: { ...from }, to: { ...to }, lengthM, widthM, heightM, joint, ends },
    ...{ sheet: sheetId, material: sheet.material, thicknessM: sheet.thickness },
    ...{ sheetWidthM: sheet.width, sheetHeightM: sheet.height, sheetGrain: sheet.grain ?? null },
    form: section?.form ?? 'on-edge',
    strips: section?.strips ?? 0,
    cutWidthM: section?.cutWidthM ?? heightM,
    massKg: lengthM * widthM * heightM * sheet.density,
  };
}

/** What a rib adds to the stiffness of its board, the grain of which may run either way; the lesser counts. */
function leastBending({ rules }: Pick<Job, 'rules'>, { sheet, given }: Board, rib: Rib): number {
  const along = plateSheet(sheet, rules);
  const ways = { level: along, upright: quarterTurned(along) };
  const { grain } = given.outline;
  const known = grain !== undefined && sheet.grain !== undefined ? [ways[grain]] : Object.values(ways);
  return Math.min(...known.map((lying) => ribBending(rib, lying)));
}

/** A rib as the plate model bends it; glued, with the flange that works with it. */
export function ribBend(
  { rules }: Pick<Job, 'rules'>,
  { sheet }: Pick<Board, 'sheet'>,
  rib: StandingRib,
  { region, fixings }: { readonly region: Region; readonly fixings: readonly Point[] },
): Rib {
  const { widthM, heightM } = rib;
  const section = {
    widthM,
    heightM,
    modulusPa: stripModulus(rib.sheet, rules),
    densityKgM3: rib.sheet.density,
  };
  const isBonded = rib.joint === 'glued' && takesGlue(rib.sheet) && takesGlue(sheet);
  return {
    ...{ id: rib.id, from: rib.from, to: rib.to, ...section },
    ...(isBonded ? { flangeM: flangeWidthM(rib, fixings, region) } : {}),
  };
}

/** Writes down how the numbers of the ribs came about. */
export function traceRibs(
  board: string,
  { ribs, ground }: Pick<PlannedRibs, 'ribs' | 'ground'>,
  book: PlanBook,
): void {
  for (const rib of ribs) {
    const at = `boards.${board}.ribs.${rib.id}`;
    if (rib.ends === 'computed')
      book.trace(
        `${at}.lengthM`,
        traced(rib.lengthM, 'm', {
          rule: 'rib-length',
          formula: 'longest stretch of its line clear of edges, cut-outs, holes, fixings and obstacles',
          citation: 'plane geometry; clearance: common practice, no source',
          mark: 'cp',
          inputs: [['clearance', ground.clearanceM, 'm']],
        }),
      );
    book.trace(
      `${at}.massKg`,
      traced(rib.massKg, 'kg', {
        rule: 'rib-mass',
        formula: 'length x width x height x density',
        citation: 'mass of a body of even density',
        inputs: [
          ['length', rib.lengthM, 'm'],
          ['width', rib.widthM, 'm'],
          ['height', rib.heightM, 'm'],
          ['sheet', rib.sheet, ''],
        ],
      }),
    );
    if (rib.bendingNm2 !== null) book.trace(`${at}.bendingNm2`, bendingTrace(rib, rib.bendingNm2));
  }
}

function bendingTrace(rib: PlanRib, bendingNm2: number): Traced<number> {
  const glued = rib.joint === 'glued';
  return traced(bendingNm2, 'N m2', {
    rule: 'rib-bending',
    formula: glued
      ? 'E I + e^2 EA EA_flange / (EA + EA_flange)'
      : 'E I of its own section: screwed, it slides',
    citation: glued
      ? 'parallel-axis theorem for a composite section; effective width EN 1995-1-1, 9.1.2, quoted from memory'
      : 'bending of a rectangular section',
    ...(glued ? { mark: 'mem' as const } : {}),
    inputs: [
      ['width', rib.widthM, 'm'],
      ['height', rib.heightM, 'm'],
      ['joint', rib.joint, ''],
    ],
  });
}

/** The ribs of one board: as they stand, as they are planned, what they keep off, and what is wrong before that. */
export interface PlannedRibs {
  readonly standing: readonly StandingRib[];
  readonly fastened: readonly FastenedRib[];
  readonly ribs: PlanRib[];
  readonly ground: RibLimits;
  readonly faults: readonly BoardRemark[];
}

/** Plans the ribs of a laid-out board, past the holes that it has without them. */
export function planRibs(job: Job, laid: RibbedBoard, holes: readonly PlanHole[]): PlannedRibs {
  const { ribs: standing, faults } = standingRibs(job, laid);
  const ground = { ...ribLimits(job, laid), holes: openHoles(holes) };
  const fastened = fastenRibs(job, laid.board, standing, ground, holes);
  return { standing, fastened, ribs: fastened.map(({ rib }) => rib), ground, faults };
}

/** The ribs that count in the stiffness of a board: those that can be built as they are written. */
export function countedRibs(job: Job, board: Board, { standing, ribs, ground }: PlannedRibs): Rib[] {
  return standing
    .filter(({ id }) => ribs.some((rib) => rib.id === id && rib.bendingNm2 !== null))
    .map((rib) => ribBend(job, board, rib, ground));
}

/** The ribs as masses that the fixings hold, over the rear of the board. */
export function ribMasses(board: Board, { ribs }: PlannedRibs): HeldMass[] {
  return ribs.map(({ id, massKg, from, to, face, heightM }): HeldMass => {
    const zM = face === 'rear' ? -heightM / 2 : board.sheet.thickness + heightM / 2;
    return { id, massKg, xM: (from.xM + to.xM) / 2, yM: (from.yM + to.yM) / 2, zM };
  });
}

/** The holes that the screws of ribs take through the board. */
export function ribScrewHoles({ fastened }: PlannedRibs): HoleToDrill[] {
  return fastened.flatMap(({ rib, screws }) =>
    screws.map(({ xM, yM, diameterM }, at): HoleToDrill => {
      const through = { depthM: null, pilotFor: null, behind: null } as const;
      return {
        id: `${rib.id}.screw-${at + 1}`,
        xM,
        yM,
        diameterM,
        ...through,
        purpose: 'mounting',
        of: rib.id,
      };
    }),
  );
}
