import type { JobFilter } from '../../model/content/job.ts';
import { type Device, type Job, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { filtersLeftIn } from './final-filters.ts';

/**
 * The filters in the path of an amplifier channel after commissioning: of the processor output that feeds its input,
 * those that the job asks of the amplifier, and what its own controls leave in beside.
 */
export function filtersBefore(
  job: Job,
  devices: DevicesById,
  amplifier: Device,
  channel: string,
  {
    input,
    positive,
    negative,
  }: { readonly input: string; readonly positive: string; readonly negative: string },
): PlanFilter[] {
  const names = [...new Set([positive, negative].flatMap((terminal) => [terminal, stemName(terminal)]))];
  return [
    ...feedFilters(job, devices, { device: amplifier.id, terminal: input }),
    ...filtersAt(devices, amplifier.id, names),
    ...filtersLeftIn(amplifier, channel, `${amplifier.id}.${stemName(positive)}`),
  ];
}

/** The output that a signal input is linked to, whichever way round the link is written; a pair by its positive. */
export function feedOf(job: Job, input: LinkEnd): LinkEnd | null {
  const id = terminalId(input);
  const isInput = (end: LinkEnd) => terminalId(end) === id || terminalId(end) === `${id}+`;
  for (const { from, to } of job.links) {
    if (isInput(to)) return from;
    if (isInput(from)) return to;
  }
  return null;
}

/** The filters that the job asks of the output that feeds an input. */
export function feedFilters(job: Job, devices: DevicesById, input: LinkEnd): PlanFilter[] {
  const feeding = feedOf(job, input);
  if (feeding === null) return [];
  return filtersAt(devices, feeding.device, [...new Set([feeding.terminal, stemName(feeding.terminal)])]);
}

/** What the job asks of a device at a terminal, by any of its names. */
function filtersAt(devices: DevicesById, device: string, names: readonly string[]): PlanFilter[] {
  const filters = devices.get(device)?.given?.filters ?? {};
  return names.flatMap((name) =>
    (filters[name] ?? []).map((filter) => planFilter(`${device}.${name}`, filter)),
  );
}

function planFilter(where: string, { pass, type, order, corner }: JobFilter): PlanFilter {
  return { where, pass, type, order, cornerHz: corner };
}

/** The inputs of an amplifier that a channel plays: its own, and those that are added to it. */
export function channelInputs(job: Job, { id, amplifier }: Pick<PlanChannel, 'id' | 'amplifier'>): LinkEnd[] {
  const spec = job.devices.find((device) => device.id === amplifier)?.spec;
  if (spec?.kind !== 'amplifier') return [];
  const name = id.slice(amplifier.length + 1);
  const channel = spec.channels[name] ?? spec.bridges[name];
  if (!channel) return [];
  return [channel.input, ...channel.summed].map((terminal) => ({ device: amplifier, terminal }));
}
