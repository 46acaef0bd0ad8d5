import type { GrainWay } from '../../model/outline.ts';
import { hertz, modeHertz, sagMm } from '../../model/printed/told.ts';
import { type Figure, type Mark, type Traced, traced } from '../../model/trace.ts';
import { type Item, onBoard, type Placement } from '../layout/item.ts';
import type { BoardRemark } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import { bendPlate, type Rib, ribBending, type SpreadMass, type Support } from './plate.ts';
import type { LyingSheet } from './sheet-stiffness.ts';

/** A board with its load, on its fixings. */
export interface BoardOnFixings {
  readonly shape: BoardShape;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  readonly supports: readonly Support[];
}

/** A way to build it: material, thickness, ribs. */
export interface Build {
  readonly id: string;
  /** How its sheet may lie: one way, or both where nothing says which way the grain runs. */
  readonly ways: readonly LyingSheet[];
  /** Ways of the grain that may be relied on where they are not given: the cut sheet shows them and nesting keeps them. */
  readonly kept: readonly GrainWay[];
  readonly ribs: readonly Rib[];
  /** What of its stiffness its part does not state. */
  readonly assumed: readonly string[];
}

/** How a board is looked at. */
export interface StiffnessAim {
  /** The first mode asked for: where the softer way of the grain keeps it, the grain stays open. */
  readonly wantedHz: number;
  /** Elements along the longer side, for a coarser look than the plate's own. */
  readonly elements?: number;
}

/** How stiff a board is. */
export interface Stiffness {
  readonly build: string;
  /** Greatest deflection under its own weight laid level, metres. */
  readonly sagM: Traced<number>;
  /** First natural frequency, Hz: the lower of what the sag says and what the plate's first mode says. */
  readonly firstModeHz: Traced<number>;
  /** The first mode of the plate model by itself, Hz. */
  readonly plateModeHz: number;
  readonly massKg: number;
  /** The way that the grain has to run for it; null where either will do, or the sheet has none. */
  readonly grain: GrainWay | null;
  /** What of the stiffness of the sheet its part does not state. */
  readonly assumed: readonly string[];
}

const model =
  'thin orthotropic plate by rectangular finite elements (Adini, Clough, Melosh), held in points by its fixings, items as loose mass';

/**
 * The first natural frequency that a static sag stands for, Hz: f = sqrt(g / sag) / 2 pi = 15.8 / sqrt(sag in
 * mm), of a mass on a spring. A plate that sags to one side is never slower than its greatest sag says.
 */
export function modeOfSagHz(sagM: number): number {
  return 15.8 / Math.sqrt(sagM * 1000);
}

/** Mass of items spread over a grid of points in their footprints. */
function massesOf({ items, placements }: BoardOnFixings): SpreadMass[] {
  const shares = [0.125, 0.375, 0.625, 0.875];
  return placements.flatMap((at) => {
    const item = items.find(({ id }) => id === at.item);
    if (!item) return [];
    const points = shares.flatMap((i) =>
      shares.map((j) => onBoard(item, at, { xM: i * item.widthM, yM: j * item.depthM })),
    );
    return [{ massKg: item.massKg, points }];
  });
}

/**
 * Sag and first natural frequency of a loaded board on its fixings; null where they do not hold it (fewer
 * than three, or all in one line), which `stiffnessFaults` reports. Where the grain may run both ways the weaker one
 * counts, and the grain stays open; unless that is less than wanted and nesting keeps the stiffer one.
 */
export function boardStiffness(
  board: BoardOnFixings,
  build: Build,
  { wantedHz, elements }: StiffnessAim,
): Stiffness | null {
  const bent = build.ways.flatMap((way) => stiffnessOf(board, build, way, elements) ?? []);
  const [softest, stiffest] = bent.toSorted((a, b) => a.firstModeHz.value - b.firstModeHz.value);
  if (!softest || bent.length < build.ways.length) return null;
  if (!stiffest) return softest;
  const relies =
    softest.firstModeHz.value < wantedHz && stiffest.firstModeHz.value > softest.firstModeHz.value;
  if (relies && stiffest.grain !== null && build.kept.includes(stiffest.grain)) return stiffest;
  const sagM = softest.sagM.value >= stiffest.sagM.value ? softest.sagM : stiffest.sagM;
  return { ...softest, sagM, grain: null };
}

function stiffnessOf(
  board: BoardOnFixings,
  build: Build,
  way: LyingSheet,
  elements: number | undefined,
): Stiffness | null {
  const { supports, shape } = board;
  const bent = bendPlate({
    ...{ region: shape.region, sheet: way.sheet, ribs: build.ribs, supports, masses: massesOf(board) },
    ...(elements === undefined ? {} : { elements }),
  });
  if (!bent) return null;
  const inputs: readonly Figure[] = [
    ...sheetInputs(build, way),
    ['mass', bent.massKg, 'kg'],
    ['fixings', supports.length, ''],
    ...ribInputs(build, way),
  ];
  const mark: { readonly mark?: Mark } = build.assumed.length > 0 ? { mark: 'mem' } : {};
  const bySagHz = modeOfSagHz(bent.sagM);
  return {
    build: build.id,
    sagM: traced(bent.sagM, 'm', {
      rule: 'board-sag',
      formula: 'K w = m g, greatest w',
      citation: model,
      ...mark,
      inputs,
    }),
    firstModeHz: traced(Math.min(bySagHz, bent.modeHz), 'Hz', {
      rule: 'board-first-mode',
      formula: 'lower of 15.8 / sqrt(sag in mm) and the first mode of the plate',
      citation: model,
      ...mark,
      inputs: [
        ['sag', bent.sagM, 'm'],
        ['first mode of the plate', bent.modeHz, 'Hz'],
      ],
    }),
    plateModeHz: bent.modeHz,
    massKg: bent.massKg,
    grain: way.grain,
    assumed: build.assumed,
  };
}

const grainWords: { readonly [K in GrainWay]: string } = { level: 'left to right', upright: 'upwards' };

/** The sheet as it is bent, and which way its grain runs in that. */
function sheetInputs({ ways, assumed }: Build, { grain, sheet }: LyingSheet): Figure[] {
  const either = ways.length > 1 ? ', of both ways' : '';
  return [
    ['thickness', sheet.thicknessM, 'm'],
    ['modulus left to right', sheet.modulusXPa, 'Pa'],
    ['modulus upwards', sheet.modulusYPa, 'Pa'],
    ['shear modulus of the panel', sheet.shearPa, 'Pa'],
    ['Poisson', sheet.poisson, ''],
    ...(grain === null ? [] : [['grain', `${grainWords[grain]}${either}`, ''] as const]),
    ...(assumed.length === 0 ? [] : [['assumed', assumed.join(', '), ''] as const]),
  ];
}

/** Each rib that counts with what it adds to the bending stiffness, or that there is none. */
function ribInputs({ ribs }: Build, { sheet }: LyingSheet): Figure[] {
  if (ribs.length === 0) return [['ribs', 'none', '']];
  return ribs.map((rib) => [
    `rib ${rib.id}, ${rib.flangeM ? 'glued' : 'screwed'}`,
    ribBending(rib, sheet),
    'N m2',
  ]);
}

/** What the first mode of a board is judged by, Hz: below `leastHz` it stops, below `wantedHz` it is a caution. */
export interface ModeLimits {
  readonly leastHz: number;
  readonly wantedHz: number;
}

/** Which limit is which: the least of every board, and the one that a subwoofer beside it asks for. */
export function modeLimitText({ leastHz, wantedHz }: ModeLimits): string {
  const least = `at least ${hertz(leastHz)} is asked for`;
  return wantedHz > leastHz ? `${least} of every board, ${hertz(wantedHz)} beside a subwoofer` : least;
}

/** A board that is not held, or that is too soft; the remedy is the caller's, who knows what sheets there are. */
export function stiffnessFaults(
  board: string,
  stiffness: Stiffness | null,
  { leastHz, wantedHz }: ModeLimits,
  remedy = 'a thicker or stiffer sheet, another fixing near the middle, or a rib',
): readonly BoardRemark[] {
  const common = { of: [board], source: model, mark: 'cp' } as const;
  if (!stiffness)
    return [
      {
        ...common,
        rule: 'board-not-held',
        level: 'stop',
        message: `${board}: its fixings leave it free to tip; three that are not in one line are the least`,
        remedy: 'add fixings on sound points',
      },
    ];
  const value = stiffness.firstModeHz.value;
  if (value >= wantedHz) return [];
  const limit = value < leastHz ? leastHz : wantedHz;
  const assumed = stiffness.assumed.length === 0 ? '' : `; assumed: ${stiffness.assumed.join(', ')}`;
  return [
    {
      ...common,
      rule: 'first-mode-low',
      level: value < leastHz ? 'stop' : 'caution',
      message: `${board} sags ${sagMm(1000 * stiffness.sagM.value)} under its own weight: its first mode is at ${modeHertz(value)}, ${modeLimitText({ leastHz, wantedHz })}${assumed}`,
      value,
      limit,
      unit: 'Hz',
      remedy,
    },
  ];
}

/** What each way to build comes to, and the lightest that is stiff enough; null where none is. */
export interface StiffnessChoice {
  readonly tried: readonly Stiffness[];
  readonly chosen: Stiffness | null;
}

/** Tries ways to build a board and chooses the lightest whose first mode is at the limit or above. */
export function chooseBuild(
  board: BoardOnFixings,
  builds: readonly Build[],
  wantedHz: number,
): StiffnessChoice {
  const tried = builds.flatMap((build) => boardStiffness(board, build, { wantedHz }) ?? []);
  const enough = tried.filter(({ firstModeHz }) => firstModeHz.value >= wantedHz);
  const [chosen] = enough.toSorted((a, b) => a.massKg - b.massKg);
  return { tried, chosen: chosen ?? null };
}
