import type { Device, Job } from '../model/content/resolved-job.ts';
import { unplaced } from './built/opened-again.ts';
import type { PlanBook, PlanNotes } from './plan-book.ts';
import type { CircuitEdge, CircuitSource } from './power/circuit/circuit.ts';
import type { SizedFuse } from './power/sizing/fuse-sizing.ts';
import { LeastSizes, type LeastSizesHeld } from './power/sizing/least-sizes.ts';
import type { Settled, SettledJob } from './settle-sizes.ts';
import { sizingBasis } from './sizing-basis.ts';
import type { WireLength } from './wiring/wire-lengths.ts';

/** A fuse whose way, device and source are told by their names in the circuit. */
interface HeldFuse extends Omit<SizedFuse, 'edge' | 'device' | 'source'> {
  readonly edge: string;
  readonly device: string;
  /** The positive post of its source. */
  readonly source: string | null;
}

/** A settled job as plain data: what it came to, without what a job says or its circuit shows. */
export interface HeldSettled
  extends Pick<Settled, 'all' | 'routed' | 'laid' | 'passes'>,
    Pick<Job, 'links' | 'boards' | 'held' | 'proposals'> {
  readonly cables: Job['file']['cables'];
  /** Devices that the revision before placed, and that are open again. */
  readonly opened: readonly string[];
  readonly conductors: Settled['power']['conductors'];
  readonly fuses: readonly HeldFuse[];
  readonly lengths: readonly (readonly [link: string, length: WireLength])[];
  readonly least: LeastSizesHeld;
  /** What was noticed while places were searched for. */
  readonly notes: PlanNotes;
}

/** What of a settled job is worth holding. */
export function heldSettled(written: Job, { job, settled }: SettledJob, book: PlanBook): HeldSettled {
  const { sizing, power, laid, all, routed, passes } = settled;
  const placed = new Set(written.devices.flatMap((device) => (device.given?.at ? [device.id] : [])));
  const { links, boards, held, proposals } = job;
  return {
    ...{ links, boards, held, proposals, cables: job.file.cables, all, routed, passes },
    // What places were searched for by is asked for no more.
    laid: laid.map((one) => ({ ...one, search: null })),
    opened: job.devices.flatMap(({ id, given }) => (placed.has(id) && !given?.at ? [id] : [])),
    conductors: power.conductors,
    fuses: power.fuses.map(({ edge, device, source, ...fuse }) => ({
      ...fuse,
      ...{ edge: edge.id, device: device.id, source: source?.positive ?? null },
    })),
    lengths: links.map(({ id }) => [id, sizing.lengths(id)]),
    least: sizing.least.held(),
    notes: book.notes(),
  };
}

/** The settled job once more: what is held of it, in the circuit and with all that its job says. */
export function settledAgain(written: Job, settled: HeldSettled, book: PlanBook): SettledJob {
  const { links, boards, held, proposals, cables, opened, laid, routed, all, passes } = settled;
  const job: Job = {
    ...written,
    ...{ links, boards, held, proposals, file: { ...written.file, cables } },
    devices: written.devices.map((device) => (opened.includes(device.id) ? unplaced(device) : device)),
  };
  book.adopt(settled.notes);
  const basis = sizingBasis(job, book);
  const lengths = new Map(settled.lengths);
  const least = new LeastSizes();
  least.adopt(settled.least);
  const sizing = { ...basis, least, lengths: (link: string) => known(lengths.get(link), link) };
  const power = {
    conductors: settled.conductors,
    fuses: settled.fuses.map((fuse) => fuseAgain(fuse, basis)),
  };
  return { ...basis, settled: { sizing, power, all, laid, routed, passes } };
}

interface InCircuit {
  readonly circuit: {
    readonly edges: readonly CircuitEdge[];
    readonly sources: readonly CircuitSource[];
  };
  readonly devices: ReadonlyMap<string, Device>;
}

function fuseAgain({ edge, device, source, ...fuse }: HeldFuse, { circuit, devices }: InCircuit): SizedFuse {
  return {
    ...fuse,
    edge: known(
      circuit.edges.find(({ id }) => id === edge),
      edge,
    ),
    device: known(devices.get(device), device),
    source: source === null ? null : (circuit.sources.find(({ positive }) => positive === source) ?? null),
  };
}

function known<T>(found: T | undefined, id: string): T {
  if (found === undefined) throw new Error(`${id} is not of the job that was settled.`);
  return found;
}
