import type { JobFilter } from '../model/job.ts';
import type { PlanFilter } from '../model/plan/index.ts';
import { type Device, type Job, type LinkEnd, terminalId } from '../model/resolved-job.ts';
import type { DevicesById } from './conductor-role.ts';
import { filtersLeftIn } from './final-filters.ts';
import { stemName } from './pair-name.ts';

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
  const feeding = feedOf(job, { device: amplifier.id, terminal: input });
  const names = [...new Set([positive, negative].flatMap((terminal) => [terminal, stemName(terminal)]))];
  return [
    ...(feeding
      ? filtersAt(devices, feeding.device, [...new Set([feeding.terminal, stemName(feeding.terminal)])])
      : []),
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
