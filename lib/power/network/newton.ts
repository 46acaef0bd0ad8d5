import type { LinearBranches, LoadBranches } from './element-currents.ts';
import { factorSymmetric, type SymbolicLdl, substitute } from './sparse-ldl.ts';

/**
 * A network reduced to its unknown voltages. Row `size` is the reference: its voltage stays 0, and what its sums come
 * to is not read. Arrays may be longer than what they hold.
 */
export interface NodalSystem {
  readonly size: number;
  readonly symbolic: SymbolicLdl;
  readonly linear: LinearBranches;
  readonly loads: LoadBranches;
  /** The highest voltage that a source holds: about what the loads see before they draw. */
  readonly startV: number;
  /** The Jacobian of the linear branches, by slot. */
  readonly conductanceS: number[];
  /** By row, what the linear branches carry into it where all unknowns are 0. */
  readonly sourceA: number[];
  /** Room for the Jacobian and for the right side, filled anew at each step. */
  readonly matrix: number[];
  readonly right: number[];
  /** Room for the voltage over each load at which its tangent was taken last. */
  readonly tangentV: number[];
}

/** Why Newton's method stopped. `lost`: no longer on the branch of stable solutions, or a load at 0 V. */
export type NewtonEnd = 'converged' | 'lost';

const mostSteps = 100;
/** The search ends where what is left is under `doneV`; a step under `slowV` ends it once rounding keeps it from shrinking. */
const doneV = 1e-11;
const slowV = 1e-8;
/** A second step longer than this share of the first says too little of what is left. */
const nearShare = 0.01;

/** Starts matrix and right side with the linear branches at x. */
function startAt({ size, symbolic, conductanceS, linear, matrix, right }: NodalSystem, x: number[]): void {
  for (let slot = 0; slot < symbolic.slots; slot += 1) matrix[slot] = conductanceS[slot] ?? 0;
  for (let row = 0; row <= size; row += 1) right[row] = 0;
  const { count, from, to, offsetV, siemens, fixedA } = linear;
  for (let k = 0; k < count; k += 1) {
    const i = from[k] ?? 0;
    const j = to[k] ?? 0;
    const u = (x[i] ?? 0) - (x[j] ?? 0) + (offsetV[k] ?? 0);
    const currentA = (siemens[k] ?? 0) * u + (fixedA[k] ?? 0);
    right[i] = (right[i] ?? 0) - currentA;
    right[j] = (right[j] ?? 0) + currentA;
  }
}

/* The loops below write out what `branchV` says: a call in each would cost as much as all else in them. */

/** Adds the loads at x; false where one that needs a voltage has none. */
function addLoads(system: NodalSystem, x: number[], share: number): boolean {
  const { count, from, to, offsetV, givenA, powerW } = system.loads;
  const { tangentV } = system;
  for (let k = 0; k < count; k += 1) {
    const u = (x[from[k] ?? 0] ?? 0) - (x[to[k] ?? 0] ?? 0) + (offsetV[k] ?? 0);
    const fixedA = share * (givenA[k] ?? 0);
    const sharedW = share * (powerW[k] ?? 0);
    if (!(u > 0) && (sharedW > 0 || fixedA > 0)) return false;
    tangentV[k] = u;
    const movingA = sharedW === 0 ? 0 : sharedW / u;
    addLoad(system, k, fixedA + movingA, sharedW === 0 ? 0 : -movingA / u);
  }
  return true;
}

/** Adds the load k, which carries `currentA`, rising by `slopeS` with its voltage. */
function addLoad({ loads, matrix, right }: NodalSystem, k: number, currentA: number, slopeS: number): void {
  const from = loads.from[k] ?? 0;
  const to = loads.to[k] ?? 0;
  const slot = loads.slot[k] ?? 0;
  right[from] = (right[from] ?? 0) - currentA;
  right[to] = (right[to] ?? 0) + currentA;
  matrix[from] = (matrix[from] ?? 0) + slopeS;
  matrix[to] = (matrix[to] ?? 0) + slopeS;
  matrix[slot] = (matrix[slot] ?? 0) - slopeS;
}

/** Starts matrix and right side with the linear branches where all unknowns are 0. */
function startAtZero({ size, symbolic, conductanceS, sourceA, matrix, right }: NodalSystem): void {
  for (let slot = 0; slot < symbolic.slots; slot += 1) matrix[slot] = conductanceS[slot] ?? 0;
  for (let row = 0; row <= size; row += 1) right[row] = sourceA[row] ?? 0;
}

/**
 * On the right side, what is left of the equations after a step: the current by which each load's law P/u lies above
 * the tangent that the step took for it. At the voltage u now and v then it is P (u - v)^2 / (v^2 u); all else is
 * linear. False where a load that needs a voltage has lost it.
 */
function leaveBends({ size, loads, right, tangentV }: NodalSystem, x: number[], share: number): boolean {
  for (let row = 0; row <= size; row += 1) right[row] = 0;
  for (let k = 0; k < loads.count; k += 1) {
    const from = loads.from[k] ?? 0;
    const to = loads.to[k] ?? 0;
    const u = (x[from] ?? 0) - (x[to] ?? 0) + (loads.offsetV[k] ?? 0);
    const sharedW = share * (loads.powerW[k] ?? 0);
    if (!(u > 0) && (sharedW > 0 || share * (loads.givenA[k] ?? 0) > 0)) return false;
    if (sharedW === 0) continue;
    const moved = u / (tangentV[k] ?? 0) - 1;
    const bentA = (sharedW * moved * moved) / u;
    right[from] = (right[from] ?? 0) - bentA;
    right[to] = (right[to] ?? 0) + bentA;
  }
  return true;
}

/** Solves for a step with the matrix taken apart last and takes it; how far a voltage moved at most. */
function move({ size, symbolic, matrix, right }: NodalSystem, x: number[]): number {
  substitute(symbolic, matrix, right);
  let largest = 0;
  for (let i = 0; i < size; i += 1) {
    const change = right[i] ?? 0;
    x[i] = (x[i] ?? 0) + change;
    largest = Math.max(largest, Math.abs(change));
  }
  return largest;
}

/**
 * Newton's method on the nodal equations, x changed in place. The Jacobian G - sum P/u^2 a a^T is symmetric,
 * and where it is positive definite the equations are the gradient of a strictly convex function on a convex
 * set: at most one solution lies there, the high-voltage one, and a factor that fails shows that it was left.
 * Started above that solution, as the open-circuit voltages are, with loads that only draw each other's voltage down,
 * the steps fall monotonically towards it (monotone Newton theorem: the equations are convex).
 *
 * Each step d is followed by a second, e, with the same factor (Shamanskii's method). Newton's method leaves about
 * C d^2 / 2 = e, and the second step about C d e = 2 e^2 / d. The share by which the Jacobian changed over them is
 * about C d = 2 e / d: where that is small, it is as definite at the solution as where it was taken apart.
 */
export function newton(system: NodalSystem, x: number[], share: number): NewtonEnd {
  let last = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step += 1) {
    startAt(system, x);
    if (!addLoads(system, x, share) || !factorSymmetric(system.symbolic, system.matrix)) return 'lost';
    const first = move(system, x);
    if (!Number.isFinite(first)) return 'lost';
    // A step that rounding keeps from shrinking is the last as well.
    if (first < doneV || (first < slowV && first >= last / 4)) return 'converged';
    if (!leaveBends(system, x, share)) return 'lost';
    const second = move(system, x);
    if (second < nearShare * first && 2 * second * second < doneV * first) return 'converged';
    last = first;
  }
  return 'lost';
}

/**
 * The unknowns with every load off, where the equations are linear, written to x; false where no source holds the
 * network.
 */
export function openCircuit(system: NodalSystem, x: number[]): boolean {
  return firstStep(system, x, 0);
}

/**
 * What one step of Newton's method comes to, written to x, from wherever each load of the share sees `startV`: the
 * laws of all else are linear, so nothing more need be known of that place. False where it leads nowhere.
 */
export function firstStep(system: NodalSystem, x: number[], share: number): boolean {
  const { symbolic, loads, startV, matrix, right } = system;
  startAtZero(system);
  for (let k = 0; k < loads.count; k += 1) {
    const sharedW = share * (loads.powerW[k] ?? 0);
    const movingA = sharedW === 0 ? 0 : sharedW / startV;
    const slopeS = sharedW === 0 ? 0 : -movingA / startV;
    const fixedA = share * (loads.givenA[k] ?? 0);
    const atRestA = fixedA + movingA + slopeS * ((loads.offsetV[k] ?? 0) - startV);
    addLoad(system, k, atRestA, slopeS);
  }
  if (!factorSymmetric(symbolic, matrix)) return false;
  substitute(symbolic, matrix, right);
  return moveTo(system, x);
}

/** Takes the solution in `right` as the unknowns; false where it holds what is no number. */
function moveTo({ size, right }: NodalSystem, x: number[]): boolean {
  for (let row = 0; row < size; row += 1) {
    const voltageV = right[row] ?? 0;
    if (!Number.isFinite(voltageV)) return false;
    x[row] = voltageV;
  }
  x[size] = 0;
  return true;
}
