import { factorise, type SymbolicLdl, substitute } from './sparse-ldl.ts';

/** At the voltage u a branch carries siemens * u + fixedA + share * (givenA + powerW / u). */
export interface BranchLaw {
  readonly siemens: number;
  readonly fixedA: number;
  readonly givenA: number;
  readonly powerW: number;
}

/** A branch between two unknowns (-1 is the reference); the voltage over it is u = x[from] - x[to] + offsetV. */
export interface NodalBranch {
  /** Number of the network's element that it stands for. */
  readonly element: number;
  readonly from: number;
  readonly to: number;
  /** Slot of (from, to) in the matrix; -1 where either is the reference or both are the same. */
  readonly slot: number;
  readonly offsetV: number;
  readonly law: BranchLaw;
}

/** A network reduced to its unknown voltages. */
export interface NodalSystem {
  readonly size: number;
  readonly symbolic: SymbolicLdl;
  readonly branches: readonly NodalBranch[];
  /** Room for the Jacobian and for the right side, filled anew at each step. */
  readonly matrix: Float64Array;
  readonly right: Float64Array;
}

/** Voltage over a branch at the unknowns x. */
export function branchV({ from, to, offsetV }: NodalBranch, x: Float64Array): number {
  return (from < 0 ? 0 : (x[from] ?? 0)) - (to < 0 ? 0 : (x[to] ?? 0)) + offsetV;
}

/** Current of a branch at the voltage u over it. */
export function branchA({ siemens, fixedA, givenA, powerW }: BranchLaw, u: number, share: number): number {
  const linearA = siemens * u + fixedA + share * givenA;
  const sharedW = share * powerW;
  return sharedW === 0 ? linearA : linearA + sharedW / u;
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
function assemble({ branches, matrix, right }: NodalSystem, x: Float64Array, share: number): boolean {
  matrix.fill(0);
  right.fill(0);
  for (const branch of branches) {
    const { from, to, law } = branch;
    const u = branchV(branch, x);
    const powerW = share * law.powerW;
    if (!(u > 0) && (powerW > 0 || share * law.givenA > 0)) return false;
    // A branch inside one group adds nothing: what leaves the group enters it again.
    if (from === to) continue;
    const current = branchA(law, u, share);
    const slope = law.siemens - (powerW === 0 ? 0 : powerW / (u * u));
    add(right, from, -current);
    add(right, to, current);
    add(matrix, from, slope);
    add(matrix, to, slope);
    add(matrix, branch.slot, -slope);
  }
  return true;
}

/** The step of Newton's method at x, left in `right`; false where the Jacobian is not positive definite there. */
function takeStep(system: NodalSystem, x: Float64Array, share: number): boolean {
  const { symbolic, matrix, right } = system;
  if (!assemble(system, x, share) || !factorise(symbolic, matrix)) return false;
  substitute(symbolic, matrix, right);
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
    if (largest < doneV || (largest < slowV && largest >= last / 4)) return 'converged';
    last = largest;
  }
  return 'lost';
}

/** The unknowns with every load off, where the equations are linear; null where no source holds the network. */
export function openCircuit(system: NodalSystem): Float64Array | null {
  const x = new Float64Array(system.size);
  if (!takeStep(system, x, 0)) return null;
  x.set(system.right);
  return x.every(Number.isFinite) ? x : null;
}
