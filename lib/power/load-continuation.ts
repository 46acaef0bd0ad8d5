import { branchV, type NodalSystem, newton, openCircuit } from './newton.ts';

/** How far the loads of a system can be raised from nothing. */
export interface LoadReach {
  /** 1 where all of the load is fed. */
  readonly share: number;
  /** The unknowns at that share; null where even the unloaded network has no voltages. */
  readonly x: Float64Array | null;
  /** The branch whose voltage has fallen most against its open-circuit voltage, or has none to begin with. */
  readonly weakest: number | null;
}

const finest = 1e-7;

/**
 * Raises the share of all constant-power and constant-current loads from 0 to `most`, following the solution
 * from the open-circuit voltages by Newton's method in steps that halve where it is lost. Where they shrink
 * under 1e-7 the solution has ended in a fold: voltage collapses there.
 */
export function raiseLoads(system: NodalSystem, most: number): LoadReach {
  const open = openCircuit(system);
  if (!open) return { share: 0, x: null, weakest: null };
  let x = open.slice();
  if (newton(system, x, most) === 'converged') return { share: most, x, weakest: null };
  x = open.slice();
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

function weakest(system: NodalSystem, open: Float64Array, x: Float64Array): number | null {
  let found: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < system.from.length; k += 1) {
    if ((system.powerW[k] ?? 0) === 0 && (system.givenA[k] ?? 0) === 0) continue;
    const openV = branchV(system, open, k);
    const ratio = openV > 0 ? branchV(system, x, k) / openV : -1;
    if (ratio >= least) continue;
    least = ratio;
    found = k;
  }
  return found;
}
