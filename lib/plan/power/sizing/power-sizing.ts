import type { Job } from '../../../model/content/resolved-job.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import type { WireLengths } from '../../wiring/wire-lengths.ts';
import type { Circuit } from '../circuit/circuit.ts';
import type { CircuitPaths } from '../circuit/circuit-paths.ts';
import type { DeviceLoad } from '../device-loads.ts';
import type { ConductorSizer } from './conductor-sizer.ts';
import type { FuseChooser } from './fuse-chooser.ts';
import type { LeastSizes } from './least-sizes.ts';
import type { Protection } from './protection.ts';

/** Everything that the sizes of the supply side follow from. */
export interface PowerSizing {
  readonly job: Job;
  readonly devices: DevicesById;
  readonly circuit: Circuit;
  readonly paths: CircuitPaths;
  readonly loads: readonly DeviceLoad[];
  readonly protection: ReadonlyMap<string, Protection>;
  readonly lengths: WireLengths;
  readonly least: LeastSizes;
  readonly sizer: ConductorSizer;
  readonly choose: FuseChooser;
}
