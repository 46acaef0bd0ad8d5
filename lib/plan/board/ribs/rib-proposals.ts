import type { Point } from '../../../board/shape/point.ts';
import { regionBox } from '../../../board/shape/region.ts';
import type { Rib } from '../../../board/strength/plate.ts';
import { freeStretch, lineAcross, ribLengthM, ribSection } from '../../../board/strength/rib.ts';
import { ribFaults } from '../../../board/strength/rib-check.ts';
import { inTheWay, openHoles, type RibLimits } from '../../../board/strength/rib-limits.ts';
import type { Stiffness } from '../../../board/strength/stiffness.ts';
import type { Job } from '../../../model/content/resolved-job.ts';
import type { Keep } from '../../../model/keep.ts';
import type { PlanHole } from '../../../model/plan/index.ts';
import { figure } from '../../../model/printed/told.ts';
import { formatLength } from '../../../model/quantity/length-text.ts';
import type { BoardFixing } from '../board-shape.ts';
import { onFixings, stiffnessStep } from '../board-steps.ts';
import type { LaidBoard } from '../laid-board.ts';
import { buildOf, stripModulus } from '../sheets/sheet-build.ts';
import { isOnShelf, type NamedSheet } from '../sheets/sheet-lacks.ts';
import { ribLimits, ribObstacles, type StandingRib } from './board-ribs.ts';
import { countedRibs, planRibs, ribBend } from './plan-ribs.ts';
import { ribGlue, ribScrew, takesGlue } from './rib-fastening.ts';

/** Ribs that make a board stiff enough. */
export interface RibProposal {
  /** What is to be written behind `ribs:`. */
  readonly text: string;
  readonly stiffness: Stiffness;
}

/** A board that ribs are looked for. */
export interface RibTask {
  readonly job: Job;
  readonly laid: LaidBoard;
  readonly fixings: readonly BoardFixing[];
  /** Its holes without those of ribs. */
  readonly holes: readonly PlanHole[];
  readonly wantedHz: number;
  readonly keep: Keep;
}

/** Elements of the coarse look by which ways are put in order; what is proposed is bent with all. */
const coarse = 12;
/** Where lines are tried: shares of the board's height and width. */
const shares = [0.5, 0.38, 0.62, 0.26, 0.74] as const;
/** Sections that are cut flat, this wide, metres; on edge they are as high as there is room, in steps. */
const flatWidths = [0.06, 0.1, 0.15] as const;
const heightStepM = 0.005;
/** Ways that are bent with all elements: the search ends with them. */
const mostTried = 12;

/**
 * The lightest rib behind a board, or pair of like ribs, that keeps the limit: strips of the board's own sheet or of
 * another in stock, on edge or flat, screwed or glued, on the line where one helps most. Null where none does, or where
 * no rib has room behind. Ribs on the mounting side are not proposed: wires have to leave there.
 */
export function proposeRibs(task: RibTask): RibProposal | null {
  const { job, laid } = task;
  const ground = ribLimits(job, laid);
  const sections = sectionsOf(job, laid, ground.standoffM - ground.clearanceM);
  const strongest = sections.at(-1);
  if (!strongest) return null;
  const bend = bender(task, ground);
  const ranked = linesOf(job, ground)
    .flatMap((line) => {
      const bent = bend([line], strongest, coarse);
      return bent ? [{ line, hz: bent.firstModeHz.value }] : [];
    })
    .toSorted((a, b) => b.hz - a.hz);
  const [best, ...others] = ranked.map(({ line }) => line);
  if (!best) return null;
  const sets = [[best], ...others.slice(0, 3).map((other) => [best, other])];
  return lightest(task, sets, sections, bend);
}

type Bend = (lines: readonly Line[], section: Section, elements?: number) => Stiffness | null;

/** How stiff the board is with ribs of a section on some lines, beside those that it has; null where one can't run. */
function bender({ job, laid, fixings, holes, wantedHz, keep }: RibTask, ground: RibLimits): Bend {
  const { board } = laid;
  const own = planRibs(job, laid, holes);
  const kept = countedRibs(job, board, own);
  const all = { ...ground, holes: openHoles(holes) };
  return (lines, section, elements) => {
    const ribs: StandingRib[] = [];
    for (const line of lines) {
      const rib = ribOn(line, section, ground, [...own.standing, ...ribs]);
      if (!rib || ribFaults(rib, all, [...own.standing, ...ribs]).length > 0) return null;
      ribs.push(rib);
    }
    const bent = ribs.map((rib): Rib => ribBend(job, board, rib, all));
    const build = buildOf(job, laid, [...kept, ...bent]);
    const aim = { wantedHz, ...(elements === undefined ? {} : { elements }) };
    return keep(stiffnessStep, { board: onFixings(laid, fixings), build, aim });
  };
}

/** Of the lines and sections that do by a coarse look, the lightest that does with all elements. */
function lightest(
  { job, laid, wantedHz }: RibTask,
  sets: readonly (readonly Line[])[],
  sections: readonly Section[],
  bend: Bend,
): RibProposal | null {
  const enough = sets.flatMap((lines) =>
    sections.flatMap((section) => {
      const bent = bend(lines, section, coarse);
      return bent && bent.firstModeHz.value >= wantedHz ? [{ lines, section, massKg: bent.massKg }] : [];
    }),
  );
  for (const { lines, section } of enough.toSorted((a, b) => a.massKg - b.massKg).slice(0, mostTried)) {
    const stiffness = bend(lines, section);
    if (stiffness && stiffness.firstModeHz.value >= wantedHz)
      return { text: textOf(job, laid, lines, section), stiffness };
  }
  return null;
}

/** A line that a rib may run on, as a job measures it. */
interface Line {
  readonly edge: 'bottom' | 'left';
  readonly distanceM: number;
}

/** Lines at shares of the board's size, and below the middle of what stands on it, on whole steps of the shop's tape. */
function linesOf({ shop }: Pick<Job, 'shop'>, { region, parts }: RibLimits): Line[] {
  const { minX, minY, maxX, maxY } = regionBox(region);
  const stepM = shop.units === 'inch' ? 0.0254 / 8 : 0.001;
  const middles = parts.map(
    ({ box }): Point => ({
      xM: (box.minX + box.maxX) / 2 - minX,
      yM: (box.minY + box.maxY) / 2 - minY,
    }),
  );
  const places = (sizeM: number, middle: (p: Point) => number): number[] => {
    const all = [...shares.map((share) => share * sizeM), ...middles.slice(0, 3).map(middle)];
    return [...new Set(all.map((atM) => Math.round(atM / stepM)))].map((steps) => steps * stepM);
  };
  return [
    ...places(maxY - minY, ({ yM }) => yM).map((distanceM): Line => ({ edge: 'bottom', distanceM })),
    ...places(maxX - minX, ({ xM }) => xM).map((distanceM): Line => ({ edge: 'left', distanceM })),
  ];
}

interface Section {
  readonly sheet: NamedSheet;
  readonly widthM: number;
  readonly heightM: number;
  readonly joint: 'screwed' | 'glued';
}

/** Sections that can be cut and fastened and have room, the one that stiffens most last. */
function sectionsOf(job: Job, { board }: LaidBoard, roomM: number): Section[] {
  const others = Object.entries(job.parts).flatMap(([id, part]): NamedSheet[] =>
    part.kind === 'board-sheet' && id !== board.sheetId && isOnShelf(job, id) ? [{ id, part }] : [],
  );
  const sheets = [{ id: board.sheetId, part: board.sheet }, ...others];
  const glues = ribGlue(job) !== null && takesGlue(board.sheet);
  const sections = sheets.flatMap((sheet): Section[] => {
    const t = sheet.part.thickness;
    const onEdge = heightsTo(roomM).map((heightM) => ({ widthM: t, heightM }));
    const flat = flatWidths.map((widthM) => ({ widthM, heightM: t }));
    const joints = glues && takesGlue(sheet.part) ? (['screwed', 'glued'] as const) : (['screwed'] as const);
    return [...onEdge, ...flat]
      .filter(
        (size) => size.heightM <= roomM + 1e-9 && ribScrew(job, board.sheet.thickness, size, sheet.part),
      )
      .flatMap((size) => joints.map((joint) => ({ sheet, ...size, joint })));
  });
  const strength = ({ sheet, widthM, heightM, joint }: Section): number =>
    stripModulus(sheet.part, job.rules) *
    widthM *
    (joint === 'glued' ? heightM * (heightM + board.sheet.thickness) ** 2 : heightM ** 3);
  return sections.toSorted((a, b) => strength(a) - strength(b));
}

function heightsTo(roomM: number): number[] {
  const steps = Math.floor(Math.min(roomM, 0.08) / heightStepM + 1e-9);
  return Array.from({ length: Math.max(0, steps - 1) }, (_, at) => (at + 2) * heightStepM);
}

/** A rib of a section on a line, as far as it is free; null where that is less than half of the board. */
function ribOn(
  { edge, distanceM }: Line,
  { sheet, widthM, heightM, joint }: Section,
  ground: RibLimits,
  before: readonly StandingRib[],
): StandingRib | null {
  const { region } = ground;
  const { minX, minY, maxX, maxY } = regionBox(region);
  const [way, atM, acrossM] =
    edge === 'bottom'
      ? (['level', minY + distanceM, maxX - minX] as const)
      : (['upright', minX + distanceM, maxY - minY] as const);
  const obstacles = [...inTheWay(ground, 'rear', heightM), ...ribObstacles(before, 'rear')];
  const ends = freeStretch({ ...lineAcross(region, way, atM), widthM }, region, obstacles, ground.clearanceM);
  if (!ends || ribLengthM(ends) < acrossM / 2) return null;
  return {
    ...{ id: `${edge} ${distanceM}`, face: 'rear', ...ends, widthM, heightM, joint },
    ...{ sheetId: sheet.id, sheet: sheet.part },
    section: ribSection(widthM, heightM, sheet.part.thickness),
    ends: 'computed',
  };
}

/** The lines of the job file: `{ rib-1: { edge: bottom, distance: 6 in, height: 15 mm } }`. */
function textOf(
  { shop }: Pick<Job, 'shop'>,
  { board }: LaidBoard,
  lines: readonly Line[],
  section: Section,
): string {
  const { sheet, widthM, heightM, joint } = section;
  const mm = (lengthM: number): string => `${figure(lengthM * 1000)} mm`;
  const onTape = (lengthM: number): string =>
    shop.units === 'inch' ? formatLength(lengthM, { system: 'inch', fraction: 16 }).fraction : mm(lengthM);
  const onEdge = Math.abs(widthM - sheet.part.thickness) <= 1e-9;
  const size = [
    `height: ${mm(heightM)}`,
    ...(onEdge ? [] : [`width: ${mm(widthM)}`]),
    ...(sheet.id === board.sheetId ? [] : [`sheet: ${sheet.id}`]),
    ...(joint === 'glued' ? ['joint: glued'] : []),
  ].join(', ');
  const free = [1, 2, 3, 4, 5, 6, 7, 8, 9]
    .map((number) => `rib-${number}`)
    .filter((id) => !Object.hasOwn(board.given.ribs, id));
  const ribs = lines.map(
    ({ edge, distanceM }, at) =>
      `${free[at] ?? `more-rib-${at + 1}`}: { edge: ${edge}, distance: ${onTape(distanceM)}, ${size} }`,
  );
  return `{ ${ribs.join(', ')} }`;
}
