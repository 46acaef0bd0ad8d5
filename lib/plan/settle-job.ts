import type { Device, Job } from '../model/content/resolved-job.ts';
import type { Keep } from '../model/keep.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import { planAudio } from './audio/audio.ts';
import type { PlannedChannel } from './audio/audio-channels.ts';
import { layOutBoards } from './board/board-layout.ts';
import { hasOpenPorts, withChosenPorts } from './board/open-port-choice.ts';
import { placeBoards } from './board/place-boards.ts';
import { chooseSheets } from './board/sheets/choose-sheets.ts';
import { withFittingPlaces } from './built/fit-places.ts';
import { withFittingWires, withOpenSizes } from './built/fit-wires.ts';
import { once } from './once-each.ts';
import { PlanBook } from './plan-book.ts';
import { buildCircuit, type Circuit } from './power/circuit/circuit.ts';
import { type CircuitPaths, circuitPaths } from './power/circuit/circuit-paths.ts';
import { type DeviceLoad, deviceLoads } from './power/device-loads.ts';
import { conductorSizer } from './power/sizing/conductor-sizer.ts';
import { protections } from './power/sizing/protection.ts';
import { hasProposedLengths, withLongestLeads, withProposedLengths } from './proposed-lengths.ts';
import { type Settled, type SizingBasis, settle, settleByWiring, sizesAtLeast } from './settle-sizes.ts';

/** What sizes, lengths and routes follow from. */
interface Basis {
  /** The job, every link with the port that it has. */
  readonly job: Job;
  readonly devices: ReadonlyMap<string, Device>;
  readonly circuit: Circuit;
  readonly paths: CircuitPaths;
  readonly audio: BuildPlan['audio'];
  readonly channels: readonly PlannedChannel[];
  readonly loads: readonly DeviceLoad[];
}

/** A job with everything placed, sized and routed. */
export interface SettledJob extends Basis {
  readonly settled: Settled;
}

/**
 * Places, sizes and routes a job. Where it leaves ports open, that is done twice: with the first ports that are free,
 * which tells where everything stands and how thick it is; then, placed as before, with the ports that cross least. So are
 * the lengths of proposed leads: they follow from the ways that the first round laid. What a released revision built is
 * where it was and of the wire that it was, as far as that still does.
 */
export function settleJob(written: Job, book: PlanBook, keep: Keep): SettledJob {
  const job = withFittingPlaces(written, keep);
  if (!job.held || job.held.reels.length === 0) return settleOnce(job, book, keep);
  const { settled } = settleOnce(withOpenSizes(job), new PlanBook(), keep);
  return settleOnce(withFittingWires(job, settled.all), book, keep);
}

function settleOnce(written: Job, book: PlanBook, keep: Keep): SettledJob {
  const drafted = withLongestLeads(written);
  const sized = once(() => sizesBeforeWays(drafted));
  const job = placeBoards(chooseSheets(drafted, sized, book, keep), book);
  const isOpen = hasOpenPorts(job) || hasProposedLengths(job);
  const first = basisOf(job, isOpen ? new PlanBook() : book);
  const laid = layOutBoards(job, { roles: first.circuit.roles, sized }, book, keep);
  const routes = isOpen ? 'draft' : 'final';
  const settled = settleByWiring(sizingOf(first), first.channels, laid, keep, routes);
  if (!isOpen) return { ...first, settled };
  const { job: ported, chosen } = withChosenPorts(job, settled, first.circuit.roles, keep);
  const second = basisOf(withProposedLengths(ported, first.devices, settled), book);
  for (const [id, port] of chosen) book.trace(id, port);
  return { ...second, settled: settle(sizingOf(second), second.channels, settled.laid, keep, 'final') };
}

/** The sizes of a job before anything is placed: what they are at least, whatever the ways on the boards. */
function sizesBeforeWays(job: Job): Settled['all'] {
  const basis = basisOf(job, new PlanBook());
  return sizesAtLeast(sizingOf(basis), basis.channels);
}

function basisOf(job: Job, book: PlanBook): Basis {
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const circuit = buildCircuit(job, devices);
  const paths = circuitPaths(circuit);
  const { audio, channels } = planAudio(job, devices, circuit, book);
  const loads = deviceLoads(job, paths, channels, book);
  return { job, devices, circuit, paths, audio, channels, loads };
}

function sizingOf({ job, devices, circuit, paths, loads }: Basis): SizingBasis {
  const sizer = conductorSizer(job, devices, circuit.roles);
  return { job, devices, circuit, paths, loads, protection: protections(circuit, paths), sizer };
}
