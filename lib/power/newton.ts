import type { LinearBranches, LoadBranches } from './branches.ts';
import { type SymbolicLdl, solveSymmetric } from './sparse-ldl.ts';

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
  readonly conductanceS: Float64Array;
  /** By row, what the linear branches carry into it where all unknowns are 0. */
  readonly sourceA: Float64Array;
  /** Room for the Jacobian and for the right side, filled anew at each step. */
  readonly matrix: Float64Array;
  readonly right: Float64Array;
}

/** Why Newton's method stopped. `lost`: no longer on the branch of stable solutions, or a load at 0 V. */
export type NewtonEnd = 'converged' | 'lost';

const mostSteps = 100;
/** The search ends where the step to come is under `doneV`; a step under `slowV` ends it once rounding keeps it from shrinking. */
const doneV = 1e-11;
const slowV = 1e-8;
/** A step longer than this says too little of the ones to come. */
const nearV = 1e-5;

/** Starts matrix and right side with the linear branches at x. */
function startAt(
  { size, symbolic, conductanceS, linear, matrix, right }: NodalSystem,
  x: Float64Array,
): void {
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

/** Adds the loads at x; false where one that needs a voltage has none. */
function addLoads(system: NodalSystem, x: Float64Array, share: number): boolean {
  const { count, from, to, offsetV, givenA, powerW } = system.loads;
  for (let k = 0; k < count; k += 1) {
    const u = (x[from[k] ?? 0] ?? 0) - (x[to[k] ?? 0] ?? 0) + (offsetV[k] ?? 0);
    const fixedA = share * (givenA[k] ?? 0);
    const sharedW = share * (powerW[k] ?? 0);
    if (!(u > 0) && (sharedW > 0 || fixedA > 0)) return false;
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

/** The step of Newton's method at x, left in `right`; false where the Jacobian is not positive definite there. */
function takeStep(system: NodalSystem, x: Float64Array, share: number): boolean {
  const { symbolic, matrix, right } = system;
  startAt(system, x);
  return addLoads(system, x, share) && solveSymmetric(symbolic, matrix, right);
}

/**
 * Newton's method on the nodal equations, x changed in place. The Jacobian G - sum P/u^2 a a^T is symmetric,
 * and where it is positive definite the equations are the gradient of a strictly convex function on a convex
 * set: at most one solution lies there, the high-voltage one, and a factor that fails shows that it was left.
 * Started above that solution, as the open-circuit voltages are, with loads that only draw each other's voltage down,
 * the steps fall monotonically towards it (monotone Newton theorem: the equations are convex).
 */
export function newton(system: NodalSystem, x: Float64Array, share: number): NewtonEnd {
  const { size, right } = system;
  let last = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step += 1) {
    if (!takeStep(system, x, share)) return 'lost';
    let largest = 0;
    for (let i = 0; i < size; i += 1) {
      const change = right[i] ?? 0;
      x[i] = (x[i] ?? 0) + change;
      largest = Math.max(largest, Math.abs(change));
    }
    if (!Number.isFinite(largest)) return 'lost';
    // The factor just taken, a step of nanovolts away, shows that the solution lies where the matrix is definite.
    if (stepToCome(largest, last) < doneV || (largest < slowV && largest >= last / 4)) return 'converged';
    last = largest;
  }
  return 'lost';
}

/** The next step, from the last two: close to the solution each is the square of the one before times a constant. */
function stepToCome(step: number, before: number): number {
  if (step < doneV || step > nearV || before === Number.POSITIVE_INFINITY) return step;
  const ratio = step / before;
  return step * ratio * ratio;
}

/**
 * The unknowns with every load off, where the equations are linear, written to x; false where no source holds the
 * network.
 */
export function openCircuit(system: NodalSystem, x: Float64Array): boolean {
  return firstStep(system, x, 0);
}

/**
 * What one step of Newton's method comes to, written to x, from wherever each load of the share sees `startV`: the
 * laws of all else are linear, so nothing more need be known of that place. False where it leads nowhere.
 */
export function firstStep(system: NodalSystem, x: Float64Array, share: number): boolean {
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
  return solveSymmetric(symbolic, matrix, right) && moveTo(system, x);
}

/** Takes the solution in `right` as the unknowns; false where it holds what is no number. */
function moveTo({ size, right }: NodalSystem, x: Float64Array): boolean {
  for (let row = 0; row < size; row += 1) {
    const voltageV = right[row] ?? 0;
    if (!Number.isFinite(voltageV)) return false;
    x[row] = voltageV;
  }
  x[size] = 0;
  return true;
}
