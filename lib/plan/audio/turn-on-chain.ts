import { type Job, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanTurnOnStage } from '../../model/plan/index.ts';
import type { PlanBook } from '../plan-book.ts';
import { type DevicesById, terminalRole } from '../wiring/conductor-role.ts';
import { ringOf } from '../work/steps/sort-steps.ts';

/** Later than any stage: what nothing drives is told last. */
const lastStage = 1000;

/** What drives a turn-on input: an output, or the contact of a relay. */
export interface Driver {
  readonly terminal: string;
  readonly item: string;
  readonly isRelay: boolean;
}

/**
 * The turn-on of every device and relay coil: what drives it, straight or over strips, and at which stage it comes up:
 * 1 for what the source itself turns on. Devices that turn each other on are remarked, with the way out.
 */
export function turnOnChain(job: Job, devices: DevicesById, book: PlanBook): PlanTurnOnStage[] {
  const inputs = job.devices.flatMap(({ id, facts, origin }) =>
    Object.keys(facts.terminals)
      .map((terminal): LinkEnd => ({ device: id, terminal }))
      .filter((end) => ['turn-on-in', 'relay-coil'].includes(terminalRole(devices, end)) && origin === 'job'),
  );
  const found = inputs.flatMap((end) => {
    const driver = driverOf(job, devices, end);
    // A coil has two terminals; the one that nothing drives is its return.
    return driver || terminalRole(devices, end) === 'turn-on-in' ? [{ end, driver }] : [];
  });
  const waits = new Map<string, string[]>();
  for (const { end, driver } of found)
    if (driver) waits.set(end.device, [...(waits.get(end.device) ?? []), driver.item]);
  const ring = ringOf(waits);
  if (ring) remarkRing(ring, devices, book);
  const stages = found.map(({ end, driver }) => ({
    item: end.device,
    terminal: terminalId(end),
    driver: driver?.terminal ?? null,
    byRelay: driver?.isRelay ?? false,
    stage: driver ? stageOf(driver.item, waits, []) : null,
  }));
  return stages.toSorted((a, b) => (a.stage ?? lastStage) - (b.stage ?? lastStage));
}

/** One more than the stage of what drives it; null in a ring. */
function stageOf(
  driver: string,
  waits: ReadonlyMap<string, readonly string[]>,
  path: readonly string[],
): number | null {
  if (path.includes(driver)) return null;
  const before = waits.get(driver) ?? [];
  if (before.length === 0) return 1;
  const stages = before.map((item) => stageOf(item, waits, [...path, driver]));
  return stages.includes(null) ? null : 1 + Math.max(...stages.map((stage) => stage ?? 0));
}

/** The first output or relay contact that wires and strips lead to from an input. */
export function driverOf(job: Pick<Job, 'links'>, devices: DevicesById, input: LinkEnd): Driver | null {
  const seen = new Set([terminalId(input)]);
  for (let reached: LinkEnd[] = [input]; reached.length > 0; ) {
    const next = reached
      .flatMap((end) => neighbours(job, devices, end))
      .filter((end) => !seen.has(terminalId(end)));
    for (const end of next) {
      seen.add(terminalId(end));
      const role = terminalRole(devices, end);
      if (role !== 'turn-on-out' && role !== 'relay-contact') continue;
      return { terminal: terminalId(end), item: end.device, isRelay: role === 'relay-contact' };
    }
    reached = next;
  }
  return null;
}

function neighbours(job: Pick<Job, 'links'>, devices: DevicesById, end: LinkEnd): LinkEnd[] {
  const id = terminalId(end);
  const wired = job.links.flatMap(({ from, to }) =>
    terminalId(from) === id ? [to] : terminalId(to) === id ? [from] : [],
  );
  const device = devices.get(end.device);
  if (device?.spec?.kind !== 'distribution') return wired;
  const bars = device.facts.elements.flatMap((element) => {
    if (element.kind !== 'joint') return [];
    const ends = [element.from, element.to];
    return ends.includes(end.terminal) ? ends : [];
  });
  return [...wired, ...bars.map((terminal) => ({ device: end.device, terminal }))];
}

function remarkRing(ring: readonly string[], devices: DevicesById, book: PlanBook): void {
  const device = devices.get(ring[0] ?? '');
  book.remark(
    {
      rule: 'turn-on-ring',
      level: 'stop',
      of: ring,
      message:
        ring.length === 1
          ? `${ring[0] ?? ''} waits for itself to turn on, so that it never does`
          : `${ring.join(' and ')} wait for each other to turn on, so that none ever does`,
      remedy: `take the turn-on of ${ring[0] ?? 'one of them'} from the source unit or from a switched and fused feed`,
    },
    { path: device?.path ?? '' },
  );
}
