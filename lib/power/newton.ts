import { factorise, type SymbolicLdl, substitute } from './sparse-ldl.ts';

/**
 * A network reduced to its unknown voltages. Branch k lies between unknowns from[k] and to[k] (-1 is the
 * reference); with u = x[from] - x[to] + offsetV it carries siemens * u + fixedA + share * (givenA + powerW / u).
 */
export interface NodalSystem {
  readonly size: number;
  readonly symbolic: SymbolicLdl;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly offsetV: Float64Array;
  readonly siemens: Float64Array;
  readonly fixedA: Float64Array;
  readonly givenA: Float64Array;
  readonly powerW: Float64Array;
  /** Slots of the branch in the matrix: (from, from), (to, to), (from, to); -1 where there is none. */
  readonly slots: readonly [Int32Array, Int32Array, Int32Array];
}

/** Voltage over branch k at the unknowns x. */
export function branchV(system: NodalSystem, x: Float64Array, k: number): number {
  const from = system.from[k] ?? -1;
  const to = system.to[k] ?? -1;
  return (from < 0 ? 0 : (x[from] ?? 0)) - (to < 0 ? 0 : (x[to] ?? 0)) + (system.offsetV[k] ?? 0);
}

/** Current of branch k at the voltage u over it. */
export function branchA(system: NodalSystem, k: number, u: number, share: number): number {
  const powerW = share * (system.powerW[k] ?? 0);
  const linearA = (system.siemens[k] ?? 0) * u + (system.fixedA[k] ?? 0) + share * (system.givenA[k] ?? 0);
  return powerW === 0 ? linearA : linearA + powerW / u;
}

/** Why Newton's method stopped. `lost`: no longer on the branch of stable solutions, or a load at 0 V. */
export type NewtonEnd = 'converged' | 'lost';

const mostSteps = 100;
/** A step under `doneV` ends the search; one under `slowV` does so once rounding keeps it from shrinking. */
const doneV = 1e-11;
const slowV = 1e-8;

function add(into: Float64Array, at: number, value: number): void {
  if (at >= 0) into[at] = (into[at] ?? 0) + value;
}

/** Fills matrix and right side at x; false where a load that needs a voltage has none. */
function assemble(
  system: NodalSystem,
  x: Float64Array,
  share: number,
  matrix: Float64Array,
  right: Float64Array,
): boolean {
  matrix.fill(0);
  right.fill(0);
  const [atFrom, atTo, atBoth] = system.slots;
  for (let k = 0; k < system.from.length; k += 1) {
    const u = branchV(system, x, k);
    const powerW = share * (system.powerW[k] ?? 0);
    if (!(u > 0) && (powerW > 0 || share * (system.givenA[k] ?? 0) > 0)) return false;
    const current = branchA(system, k, u, share);
    const slope = (system.siemens[k] ?? 0) - (powerW === 0 ? 0 : powerW / (u * u));
    add(right, system.from[k] ?? -1, -current);
    add(right, system.to[k] ?? -1, current);
    add(matrix, atFrom[k] ?? -1, slope);
    add(matrix, atTo[k] ?? -1, slope);
    add(matrix, atBoth[k] ?? -1, -slope);
  }
  return true;
}

/**
 * Newton's method on the nodal equations, x changed in place. The Jacobian G - sum P/u^2 a a^T is symmetric,
 * and where it is positive definite the equations are the gradient of a strictly convex function on a convex
 * set: at most one solution lies there, the high-voltage one, and a factor that fails shows that it was left.
 * Started at the open-circuit voltages, with loads that only draw each other's voltage down, the steps fall
 * monotonically towards that solution (monotone Newton theorem: the equations are convex).
 */
export function newton(system: NodalSystem, x: Float64Array, share: number): NewtonEnd {
  const matrix = new Float64Array(system.symbolic.slots);
  const right = new Float64Array(system.size);
  let last = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step += 1) {
    if (!assemble(system, x, share, matrix, right) || !factorise(system.symbolic, matrix)) return 'lost';
    substitute(system.symbolic, matrix, right);
    let largest = 0;
    for (let i = 0; i < system.size; i += 1) {
      const change = right[i] ?? 0;
      x[i] = (x[i] ?? 0) + change;
      largest = Math.max(largest, Math.abs(change));
    }
    if (!Number.isFinite(largest)) return 'lost';
    // The factor just taken, a step of nanovolts away, shows that the solution lies where the matrix is definite.
    if (largest < doneV || (largest < slowV && largest >= last / 4)) return 'converged';
    last = largest;
  }
  return 'lost';
}

/** The unknowns with every load off, where the equations are linear; null where no source holds the network. */
export function openCircuit(system: NodalSystem): Float64Array | null {
  const x = new Float64Array(system.size);
  const matrix = new Float64Array(system.symbolic.slots);
  const right = new Float64Array(system.size);
  if (!assemble(system, x, 0, matrix, right) || !factorise(system.symbolic, matrix)) return null;
  substitute(system.symbolic, matrix, right);
  return right.every(Number.isFinite) ? right : null;
}
