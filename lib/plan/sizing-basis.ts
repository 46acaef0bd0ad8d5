import type { Device, Job } from '../model/content/resolved-job.ts';
import { type LoadedChannel, loadedChannels, loadedOutputs } from './audio/load/output-loads.ts';
import { PlanBook } from './plan-book.ts';
import { buildCircuit, type Circuit } from './power/circuit/circuit.ts';
import { type CircuitPaths, circuitPaths } from './power/circuit/circuit-paths.ts';
import { type DeviceLoad, deviceLoads } from './power/device-loads.ts';
import { type ConductorSizer, conductorSizer } from './power/sizing/conductor-sizer.ts';
import { type FuseChooser, fuseChooser } from './power/sizing/fuse-chooser.ts';
import { type Protection, protections } from './power/sizing/protection.ts';
import { devicesById } from './wiring/conductor-role.ts';

/** What sizes, lengths and routes follow from. */
export interface SizingBasis {
  /** The job, every link with the port that it has. */
  readonly job: Job;
  readonly devices: ReadonlyMap<string, Device>;
  readonly circuit: Circuit;
  readonly paths: CircuitPaths;
  /** The channels with their loads. What they play, and by which filters, changes no size. */
  readonly channels: readonly LoadedChannel[];
  readonly loads: readonly DeviceLoad[];
  readonly protection: ReadonlyMap<string, Protection>;
  readonly sizer: ConductorSizer;
  readonly choose: FuseChooser;
}

/** What the sizes of a job follow from. Of its boards nothing but their names is read: where they stand changes none of it. */
export function sizingBasis(job: Job, book: PlanBook): SizingBasis {
  const devices = devicesById(job);
  const circuit = buildCircuit(job, devices);
  const paths = circuitPaths(circuit);
  // What is noticed of the wiring of coils is told where the audio side is planned.
  const channels = loadedChannels(job, loadedOutputs(job, devices, circuit, new PlanBook()));
  const loads = deviceLoads(job, paths, channels, book);
  const protection = protections(circuit, paths);
  const sizer = conductorSizer(job, devices, circuit.roles);
  const choose = fuseChooser(job);
  return { job, devices, circuit, paths, channels, loads, protection, sizer, choose };
}
