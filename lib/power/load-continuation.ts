import { branchV, type NodalBranch, type NodalSystem, newton, openCircuit } from './newton.ts';

/** How far the loads of a system can be raised from nothing. */
export interface LoadReach {
  /** 1 where all of the load is fed. */
  readonly share: number;
  /** The unknowns at that share; null where even the unloaded network has no voltages. */
  readonly x: Float64Array | null;
  /** The branch whose voltage has fallen most against its open-circuit voltage, or has none to begin with. */
  readonly weakest: NodalBranch | null;
}

const finest = 1e-7;

/**
 * Raises the share of all constant-power and constant-current loads from 0 to `most`, following the solution
 * from the open-circuit voltages by Newton's method in steps that halve where it is lost. Where they shrink
 * under 1e-7 the solution has ended in a fold: voltage collapses there.
 */
export function raiseLoads(system: NodalSystem, most: number): LoadReach {
  const first = openCircuit(system);
  if (!first) return { share: 0, x: null, weakest: null };
  if (newton(system, first, most) === 'converged') return { share: most, x: first, weakest: null };
  const open = openCircuit(system) ?? first;
  let x = open.slice();
  let share = 0;
  for (let step = most / 2; step >= finest * most; ) {
    const trial = x.slice();
    const next = Math.min(most, share + step);
    if (newton(system, trial, next) === 'converged') {
      x = trial;
      share = next;
      if (share === most) return { share, x, weakest: null };
      step *= 1.5;
    } else step /= 2;
  }
  return { share, x, weakest: weakest(system, open, x) };
}

function weakest({ branches }: NodalSystem, open: Float64Array, x: Float64Array): NodalBranch | null {
  let found: NodalBranch | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const branch of branches) {
    if (branch.law.powerW === 0 && branch.law.givenA === 0) continue;
    const openV = branchV(branch, open);
    const ratio = openV > 0 ? branchV(branch, x) / openV : -1;
    if (ratio >= least) continue;
    least = ratio;
    found = branch;
  }
  return found;
}
