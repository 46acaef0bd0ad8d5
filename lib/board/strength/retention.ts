import { standardGravity } from '../../model/quantity/gravity.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { JointPart } from '../../model/vocabulary.ts';
import type { BoardRemark } from '../remark.ts';
import type { Point } from '../shape/point.ts';
import type { Fixing } from './fixing.ts';

/** A mass on the board: where its centre is, in the plane and over the back of the board. */
export interface HeldMass extends Point {
  readonly id: string;
  readonly massKg: number;
  readonly zM: number;
}

/** A direction in the board's axes: x right, y up, z out of the mounting side. */
export interface Direction {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A fixing whose strength is known. */
export type RatedFixing = Pick<Fixing, 'id' | 'xM' | 'yM'> & {
  readonly pullOutN: number;
  readonly shearN: number;
  /** What gives there first, along its bolt and across it. */
  readonly pullBy?: JointPart;
  readonly shearBy?: JointPart;
  /** Of one over a spacer: its height and the width of its end faces. */
  readonly spacer?: { readonly heightM: number; readonly faceM: number };
};

/** What the fixings hold: the acceleration at which the first gives, in g, and the load of each at one g. */
export interface Retention {
  readonly retentionG: Traced<number>;
  readonly weakest: string;
  /** What gives there; null where that is not told. */
  readonly by: JointPart | null;
  readonly loads: readonly FixingLoad[];
}

interface FixingLoad {
  readonly fixing: string;
  readonly pullNPerG: number;
  readonly shearNPerG: number;
  /** Share of its strength at one g. */
  readonly usePerG: number;
}

/** All six directions, where the board's way to face is not known. */
export const everyDirection: readonly Direction[] = [
  { x: 1, y: 0, z: 0 },
  { x: -1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
  { x: 0, y: -1, z: 0 },
  { x: 0, y: 0, z: 1 },
  { x: 0, y: 0, z: -1 },
];

const method =
  'rigid board on an elastic group of fasteners: direct load shared evenly, moments by distance from the centre of the group (textbooks of machine design, eccentrically loaded bolted joints); shear over a spacer tips it on its edge; pull and shear uses added';

/**
 * The acceleration that a board's fixings hold in the worst of some directions that its mass is thrown in, in
 * g. Null where the fixings can't take a moment that the load brings: one fixing, or all in one line with the
 * load beside it.
 */
export function retention(
  masses: readonly HeldMass[],
  fixings: readonly RatedFixing[],
  thrown: readonly Direction[] = everyDirection,
): Retention | null {
  const cases = thrown.map((direction) => loadsPerG(masses, fixings, direction));
  const loads = cases.reduce<readonly FixingLoad[] | null>((worst, one) => {
    if (!worst || !one) return null;
    return highest(one) > highest(worst) ? one : worst;
  }, cases[0] ?? null);
  const [first, ...rest] = loads ?? [];
  if (!loads || !first) return null;
  const weakest = rest.reduce((worst, load) => (load.usePerG > worst.usePerG ? load : worst), first);
  if (!(weakest.usePerG > 0)) return null;
  const massKg = masses.reduce((sum, mass) => sum + mass.massKg, 0);
  const retentionG = traced(1 / weakest.usePerG, '1', {
    rule: 'retention',
    formula: '1 g / (pull / pull-out + shear / shear strength)',
    citation: method,
    inputs: [
      ['mass', massKg, 'kg'],
      ['weakest', weakest.fixing, ''],
      ['pull at 1 g', weakest.pullNPerG, 'N'],
      ['shear at 1 g', weakest.shearNPerG, 'N'],
    ],
  });
  return { retentionG, weakest: weakest.fixing, by: giving(weakest, fixings), loads };
}

/** What gives first of a fixing: by what uses more of its strength. */
function giving(load: FixingLoad, fixings: readonly RatedFixing[]): JointPart | null {
  const fixing = fixings.find(({ id }) => id === load.fixing);
  if (!fixing) return null;
  const pulls = load.pullNPerG / fixing.pullOutN >= load.shearNPerG / fixing.shearN;
  return (pulls ? fixing.pullBy : fixing.shearBy) ?? null;
}

/**
 * Pull that shear puts on a bolt over a spacer, by the newton: the spacer tips on the edge of its face and the bolt in
 * its middle holds against that. Where the board can't turn the moment is shared by both ends of the spacer, h / D,
 * else it is all at its foot, 2 h / D (statics; shared by half as EN 1992-4, shear with a lever arm, alpha_M = 2).
 */
function leverOf({ spacer }: RatedFixing, isHeldUpright: boolean): number {
  if (!spacer || spacer.heightM <= 0) return 0;
  return ((isHeldUpright ? 1 : 2) * spacer.heightM) / spacer.faceM;
}

function highest(loads: readonly FixingLoad[]): number {
  return Math.max(...loads.map(({ usePerG }) => usePerG));
}

function loadsPerG(
  masses: readonly HeldMass[],
  fixings: readonly RatedFixing[],
  direction: Direction,
): FixingLoad[] | null {
  const n = fixings.length;
  const mean = (pick: (fixing: RatedFixing) => number) => fixings.reduce((sum, f) => sum + pick(f), 0) / n;
  const [cx, cy] = [mean(({ xM }) => xM), mean(({ yM }) => yM)];
  const [xx, yy, xy] = [
    mean(({ xM }) => (xM - cx) ** 2) * n,
    mean(({ yM }) => (yM - cy) ** 2) * n,
    mean(({ xM, yM }) => (xM - cx) * (yM - cy)) * n,
  ];
  let [fx, fy, fz, mx, my, mz] = [0, 0, 0, 0, 0, 0];
  for (const { massKg, xM, yM, zM } of masses) {
    const g = massKg * standardGravity;
    const [px, py, pz] = [direction.x * g, direction.y * g, direction.z * g];
    [fx, fy, fz] = [fx + px, fy + py, fz + pz];
    // Pull that grows along y, and along x: from where the load acts, less what tips it over by its height.
    my += pz * (yM - cy) - py * zM;
    mx += pz * (xM - cx) - px * zM;
    mz += (xM - cx) * py - (yM - cy) * px;
  }
  const slopes = solvePair(xx, xy, yy, mx, my);
  const polar = xx + yy;
  if (n === 0 || !slopes || (polar < 1e-12 && Math.abs(mz) > 1e-9)) return null;
  const isHeldUpright = isSpread(xx, xy, yy);
  return fixings.map((fixing) => {
    const { id, xM, yM, pullOutN, shearN } = fixing;
    const [rx, ry] = [xM - cx, yM - cy];
    const spin = polar > 0 ? mz / polar : 0;
    const shear = Math.hypot(fx / n - spin * ry, fy / n + spin * rx);
    const straight = Math.max(0, fz / n + slopes[0] * rx + slopes[1] * ry);
    const pull = straight + leverOf(fixing, isHeldUpright) * shear;
    return {
      fixing: id,
      pullNPerG: pull,
      shearNPerG: shear,
      usePerG: pull / pullOutN + shear / shearN,
    };
  });
}

/** True of fixings that are not all in one line. */
function isSpread(xx: number, xy: number, yy: number): boolean {
  return xx * yy - xy * xy > 1e-9 * (xx + yy) ** 2;
}

/** Slopes of the pull over x and y that balance two moments; null where the fixings can't balance them. */
function solvePair(xx: number, xy: number, yy: number, mx: number, my: number): [number, number] | null {
  const whole = xx + yy;
  const determinant = xx * yy - xy * xy;
  if (isSpread(xx, xy, yy)) return [(mx * yy - my * xy) / determinant, (my * xx - mx * xy) / determinant];
  // All in one line, or one alone: only a moment along that line can be held.
  if (whole < 1e-12) return Math.hypot(mx, my) < 1e-9 ? [0, 0] : null;
  const [ux, uy] = [Math.sqrt(xx / whole), Math.sign(xy || 1) * Math.sqrt(yy / whole)];
  if (Math.abs(mx * uy - my * ux) > 1e-6 * (Math.hypot(mx, my) + 1e-9)) return null;
  const along = (mx * ux + my * uy) / whole;
  return [along * ux, along * uy];
}

/** Fixings that hold less than asked for, or that can't hold the board at all. */
export function retentionFaults(
  board: string,
  held: Retention | null,
  limitG: number,
): readonly BoardRemark[] {
  const common = { level: 'stop', of: [board] } as const;
  if (!held)
    return [
      {
        ...common,
        rule: 'board-not-held',
        message: `${board}: its fixings can't hold it against being tipped or turned`,
        remedy: 'use at least three fixings of known strength, not all in one line',
      },
    ];
  const { retentionG, weakest, by } = held;
  const what = by === null ? '' : ` (its ${by} first)`;
  if (retentionG.value >= limitG) return [];
  return [
    {
      ...common,
      of: [board, weakest],
      mark: 'mem',
      source: `${limitG} g forward, quoted from memory`,
      rule: 'fixings-too-weak',
      message: `${board}: ${weakest}${what} gives at ${Math.floor(retentionG.value * 10) / 10} g; ${limitG} g is asked for`,
      value: retentionG.value,
      limit: limitG,
      unit: 'g',
      remedy:
        'more or stronger fixings, spread wider; wider washers, or wider and lower spacers; rivet nuts in place of screws',
    },
  ];
}
