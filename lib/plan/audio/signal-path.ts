import type { Device, Job, LinkEnd } from '../../model/content/resolved-job.ts';
import type { PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { askedFilters } from './filters-asked.ts';
import { filtersLeftIn } from './final-filters.ts';
import { passedInputs, playedThrough } from './passed-on.ts';
import { feedOf, filterInLead } from './signal-feed.ts';

/**
 * The filters in the path of an amplifier channel after commissioning: of the output that feeds its input, those that
 * the job asks of the amplifier, and what its own controls leave in beside. What a part does not make is not among them.
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
    ...filtersAt(amplifier, names),
    ...filtersLeftIn(amplifier, channel, `${amplifier.id}.${stemName(positive)}`),
  ];
}

/**
 * The filters that a signal has passed before an input: of the output that feeds it and of the lead between, and before
 * a processor those that all inputs have which that output plays.
 */
export function feedFilters(
  job: Job,
  devices: DevicesById,
  input: LinkEnd,
  passed: readonly string[] = [],
): PlanFilter[] {
  const feeding = feedOf(job, input);
  const device = feeding && devices.get(feeding.device);
  if (!feeding || !device || passed.includes(device.id)) return [];
  const name = stemName(feeding.terminal);
  const lead = filterInLead(job, input);
  const linked = playedThrough(job, devices, device, feeding.terminal)?.linked ?? [];
  const before = linked.map((one) => feedFilters(job, devices, one, [...passed, device.id]));
  return [
    ...inAll(before),
    ...tappedFilters(job, device, feeding.terminal),
    ...filtersAt(device, [...new Set([feeding.terminal, name])]),
    ...(device.spec?.kind === 'amplifier' ? [] : filtersLeftIn(device, name, `${device.id}.${name}`)),
    ...(lead ? [lead] : []),
  ];
}

/** The filters that each of some paths has. */
function inAll([first = [], ...others]: readonly (readonly PlanFilter[])[]): readonly PlanFilter[] {
  return first.filter((filter) => others.every((list) => list.some((one) => isAlike(one, filter))));
}

/** Of a line output of an amplifier that is taken behind its filters: those that all channels have which play what it passes on. */
function tappedFilters(job: Job, device: Device, output: string): readonly PlanFilter[] {
  const passed = passedInputs(job, device, output);
  if (passed?.tap !== 'filters' || device.spec?.kind !== 'amplifier') return [];
  const names = passed.inputs.map(({ end }) => stemName(end.terminal));
  return inAll(
    Object.entries(device.spec.channels)
      .filter(([, { input, summed }]) => [input, ...summed].some((one) => names.includes(stemName(one))))
      .map(([name, { positive }]) => [
        ...filtersAt(device, [...new Set([positive, stemName(positive)])]),
        ...filtersLeftIn(device, name, `${device.id}.${stemName(positive)}`),
      ]),
  );
}

function isAlike(a: PlanFilter, b: PlanFilter): boolean {
  return a.pass === b.pass && a.type === b.type && a.order === b.order && a.cornerHz === b.cornerHz;
}

/** What a device makes of that which the job asks of it at a terminal, by any of its names. */
function filtersAt(device: Device, names: readonly string[]): PlanFilter[] {
  const made = askedFilters(device).filter(({ isMade }) => isMade);
  return names.flatMap((name) => made.filter(({ at }) => at === name).map(({ filter }) => filter));
}

/** The channels of its amplifier that make up a channel of the plan: of a bridge both, else itself. */
export function channelNames({ id, amplifier }: Pick<PlanChannel, 'id' | 'amplifier'>): readonly string[] {
  return id.slice(amplifier.length + 1).split('+');
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
