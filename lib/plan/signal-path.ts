import type { JobFilter } from '../model/job.ts';
import type { PlanFilter } from '../model/plan/index.ts';
import { type Job, type LinkEnd, terminalId } from '../model/resolved-job.ts';
import type { DevicesById } from './conductor-role.ts';
import { stemName } from './pair-name.ts';

/** The filters of an amplifier channel: of the processor output that feeds its input, then its own. */
export function filtersBefore(
  job: Job,
  devices: DevicesById,
  amplifier: string,
  input: string,
  outputs: readonly string[],
): PlanFilter[] {
  const feeding = feedOf(job, { device: amplifier, terminal: input });
  const own = outputs.flatMap((terminal) => filtersAt(devices, { device: amplifier, terminal }));
  return [...(feeding ? filtersAt(devices, feeding) : []), ...own].filter(
    (filter, index, all) =>
      all.findIndex(({ where, pass }) => where === filter.where && pass === filter.pass) === index,
  );
}

/** The output that a signal input is linked to, whichever way round the link is written. */
export function feedOf(job: Job, input: LinkEnd): LinkEnd | null {
  const id = terminalId(input);
  for (const { from, to } of job.links) {
    if (terminalId(to) === id) return from;
    if (terminalId(from) === id) return to;
  }
  return null;
}

function filtersAt(devices: DevicesById, end: LinkEnd): PlanFilter[] {
  const filters = devices.get(end.device)?.given?.filters ?? {};
  const names = [end.terminal, stemName(end.terminal)];
  return names.flatMap((name, index) =>
    index > 0 && name === names[0]
      ? []
      : (filters[name] ?? []).map((filter) => planFilter(`${end.device}.${name}`, filter)),
  );
}

function planFilter(where: string, { pass, type, order, corner }: JobFilter): PlanFilter {
  return { where, pass, type, order, cornerHz: corner };
}
