import { branchV } from './element-currents.ts';
import { firstStep, type NodalSystem, newton, openCircuit } from './newton.ts';
import { RealRoom } from './scratch-arrays.ts';

/** How far the loads of a system can be raised from nothing. */
export interface LoadReach {
  /** 1 where all of the load is fed. */
  readonly share: number;
  /** The unknowns at that share; null where even the unloaded network has no voltages. */
  readonly x: number[] | null;
  /** The number of the load whose voltage has fallen most against its open-circuit voltage, or has none to begin with. */
  readonly weakest: number | null;
}

const finest = 1e-7;
const unknownsRoom = new RealRoom();

/**
 * Takes all of the load at once where Newton's method gets there from the voltage of the sources. Else it raises the
 * share of all constant-power and constant-current loads from 0 to `most`, following the solution from the
 * open-circuit voltages in steps that halve where it is lost. Where they shrink under 1e-7 the solution has ended in a
 * fold: voltage collapses there.
 */
export function raiseLoads(system: NodalSystem, most: number): LoadReach {
  const first = unknownsRoom.of(system.size + 1);
  if (firstStep(system, first, most) && newton(system, first, most) === 'converged')
    return { share: most, x: first, weakest: null };
  if (!openCircuit(system, first)) return { share: 0, x: null, weakest: null };
  const open = first.slice();
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

function weakest({ loads }: NodalSystem, open: number[], x: number[]): number | null {
  let found: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < loads.count; k += 1) {
    if (loads.powerW[k] === 0 && loads.givenA[k] === 0) continue;
    const openV = branchV(loads, k, open);
    const ratio = openV > 0 ? branchV(loads, k, x) / openV : -1;
    if (ratio >= least) continue;
    least = ratio;
    found = k;
  }
  return found;
}
