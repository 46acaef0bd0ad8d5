import { type SymbolicLdl, solveSymmetric } from './sparse-ldl.ts';

/**
 * The branches whose current follows their voltage u = V[from] - V[to] + offsetV in a straight line: siemens * u + fixedA.
 * Column by column, since a network has many of them. Rows of the ends: `size` is the reference; both are, where the
 * ends are tied together.
 */
export interface LinearBranches {
  readonly count: number;
  /** Numbers of the network's elements that they stand for. */
  readonly element: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly offsetV: Float64Array;
  readonly siemens: Float64Array;
  readonly fixedA: Float64Array;
}

/** A load between two rows; at the voltage u over it, it takes share * (givenA + powerW / u). */
export interface LoadBranch {
  readonly element: number;
  readonly from: number;
  readonly to: number;
  /** Slot of (from, to) in the matrix; `size`, which nobody reads, where either end is the reference. */
  readonly slot: number;
  readonly offsetV: number;
  readonly givenA: number;
  readonly powerW: number;
}

/**
 * A network reduced to its unknown voltages. Row `size` is the reference: its voltage stays 0, and what its sums come
 * to is not read. Arrays may be longer than what they hold.
 */
export interface NodalSystem {
  readonly size: number;
  readonly symbolic: SymbolicLdl;
  readonly linear: LinearBranches;
  readonly loads: readonly LoadBranch[];
  /** The highest voltage that a source holds: about what the loads see before they draw. */
  readonly startV: number;
  /** The Jacobian of the linear branches, by slot. */
  readonly conductanceS: Float64Array;
  /** Room for the Jacobian and for the right side, filled anew at each step. */
  readonly matrix: Float64Array;
  readonly right: Float64Array;
}

/** Voltage over a load at the unknowns x. */
export function loadV({ from, to, offsetV }: LoadBranch, x: Float64Array): number {
  return (x[from] ?? 0) - (x[to] ?? 0) + offsetV;
}

/** Current of the linear branch k at the unknowns x. */
export function linearA(branches: LinearBranches, k: number, x: Float64Array): number {
  const { from, to, offsetV, siemens, fixedA } = branches;
  const u = (x[from[k] ?? 0] ?? 0) - (x[to[k] ?? 0] ?? 0) + (offsetV[k] ?? 0);
  return (siemens[k] ?? 0) * u + (fixedA[k] ?? 0);
}

/** Current of a load at the voltage u over it, with a share of the load. */
export function loadA({ givenA, powerW }: LoadBranch, u: number, share: number): number {
  const sharedW = share * powerW;
  return sharedW === 0 ? share * givenA : share * givenA + sharedW / u;
}

/** Why Newton's method stopped. `lost`: no longer on the branch of stable solutions, or a load at 0 V. */
export type NewtonEnd = 'converged' | 'lost';

const mostSteps = 100;
/** The search ends where the step to come is under `doneV`; a step under `slowV` ends it once rounding keeps it from shrinking. */
const doneV = 1e-11;
const slowV = 1e-8;
/** A step longer than this says too little of the ones to come. */
const nearV = 1e-5;

function add(into: Float64Array, at: number, value: number): void {
  into[at] = (into[at] ?? 0) + value;
}

/** Takes off the right side what the linear branches carry out of each row at x. */
function addLinear(branches: LinearBranches, x: Float64Array, right: Float64Array): void {
  const { count, from, to } = branches;
  for (let k = 0; k < count; k += 1) {
    const currentA = linearA(branches, k, x);
    add(right, from[k] ?? 0, -currentA);
    add(right, to[k] ?? 0, currentA);
  }
}

/** Fills matrix and right side at x; false where a load that needs a voltage has none. */
function assemble(system: NodalSystem, x: Float64Array, share: number): boolean {
  clear(system);
  addLinear(system.linear, x, system.right);
  for (const load of system.loads) {
    const u = loadV(load, x);
    const powerW = share * load.powerW;
    if (!(u > 0) && (powerW > 0 || share * load.givenA > 0)) return false;
    addBranch(system, load, loadA(load, u, share), powerW === 0 ? 0 : -powerW / (u * u));
  }
  return true;
}

/** The Jacobian of the linear branches, and nothing on the right side. */
function clear({ size, symbolic, conductanceS, matrix, right }: NodalSystem): void {
  for (let slot = 0; slot < symbolic.slots; slot += 1) matrix[slot] = conductanceS[slot] ?? 0;
  for (let row = 0; row <= size; row += 1) right[row] = 0;
}

/** Adds a load that carries `currentA`, rising by `slopeS` with its voltage. */
function addBranch({ matrix, right }: NodalSystem, load: LoadBranch, currentA: number, slopeS: number): void {
  const { from, to, slot } = load;
  add(right, from, -currentA);
  add(right, to, currentA);
  add(matrix, from, slopeS);
  add(matrix, to, slopeS);
  add(matrix, slot, -slopeS);
}

/** The step of Newton's method at x, left in `right`; false where the Jacobian is not positive definite there. */
function takeStep(system: NodalSystem, x: Float64Array, share: number): boolean {
  const { symbolic, matrix, right } = system;
  return assemble(system, x, share) && solveSymmetric(symbolic, matrix, right);
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
  x.fill(0, 0, system.size + 1);
  return takeStep(system, x, 0) && moveTo(system, x);
}

/**
 * What one step of Newton's method comes to, written to x, from wherever each load of the share sees `startV`: the
 * laws of all else are linear, so nothing more need be known of that place. False where it leads nowhere.
 */
export function firstStep(system: NodalSystem, x: Float64Array, share: number): boolean {
  const { size, symbolic, linear, loads, startV, matrix, right } = system;
  x.fill(0, 0, size + 1);
  clear(system);
  addLinear(linear, x, right);
  for (const load of loads) {
    const slope = (-share * load.powerW) / (startV * startV);
    const atRest = loadA(load, startV, share) + slope * (load.offsetV - startV);
    addBranch(system, load, atRest, slope);
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
  return true;
}
