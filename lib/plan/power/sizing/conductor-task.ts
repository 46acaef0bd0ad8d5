import type { Link } from '../../../model/content/resolved-job.ts';
import type { ConductorRole } from '../../../model/vocabulary.ts';
import type { RunZone } from '../../../power/conductor/ampacity.ts';
import type { GrownFor } from './least-sizes.ts';

/** What one conductor is to do. */
export interface ConductorTask {
  readonly link: Link;
  readonly role: ConductorRole;
  readonly lengthM: number;
  readonly zones: readonly RunZone[];
  readonly neededA: number;
  readonly ratedA: number;
  /** At least this area: an earlier pass, its feed, its port or its drop asked for it (mm2). */
  readonly leastMm2: number;
  readonly why: string | null;
  /** What that least area grew for, where that is a drop. */
  readonly grown?: GrownFor;
  /** Thinner than this, if anything lawful is: as thick it has no room for its bend where it lies (mm2). */
  readonly underMm2: number;
  /** For a ground, what its feeds ask of it. */
  readonly feed?: LeastConductance;
}

/** At least this conductance of one metre (S m), and why. */
export interface LeastConductance {
  readonly conductanceSm: number;
  readonly why: string;
}
