import type { z } from 'zod';
import type { filterSchema } from '../../model/content/job-device.ts';
import { hertz } from '../../model/printed/told.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';
import type { FilterPass } from '../../model/vocabulary.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { pairOf } from '../draft/draft-device.ts';
import { type OwnFilter, ownFilters } from './amplifier-filters.ts';
import type { Band } from './bands.ts';
import { groupOf } from './inputs.ts';
import type { ProcessorOutput } from './processor-links.ts';
import type { DrivenGroup, SignalChain } from './signal-chain.ts';
import { type UsedOutput, usedOutputs } from './used-outputs.ts';

type FilterText = z.input<typeof filterSchema>;

/** A corner that a band asks for. */
interface Corner {
  readonly pass: FilterPass;
  readonly hz: number;
  /** True where another group begins or ends at it. */
  readonly meets: boolean;
}

/** Writes the filters that make the bands: in the processor, else by the amplifier's own crossover. */
export function makeBands(
  draft: Draft,
  chain: SignalChain,
  bands: ReadonlyMap<string, Band>,
  outputs: readonly ProcessorOutput[],
): void {
  for (const { processor, output, group } of outputs) {
    const band = bands.get(group.id);
    const given = draft.device(processor.id)?.given?.filters[output];
    if (!band || given) continue;
    const { spec } = processor;
    const orders = (spec.kind === 'processor' ? spec['filter-orders'] : undefined) ?? [4];
    const filters = cornersOf(band, [...bands.values()]).map((one) => processorFilter(one, orders));
    if (filters.length > 0)
      draft.addAtOutput(
        processor,
        output,
        { filters },
        { rule: 'filters', reason: bandReason(band), cp: true },
      );
  }
  for (const amplifier of chain.amplifiers)
    if (!chain.processorOf.has(amplifier.id))
      for (const used of usedOutputs(draft, amplifier)) {
        const group = groupOf(chain, used);
        const band = group && bands.get(group.id);
        if (group && band) amplifierFilters(draft, used, group, band, [...bands.values()]);
      }
}

function cornersOf(band: Band, all: readonly Band[]): readonly Corner[] {
  const { fromHz, toHz, subsonicHz } = band;
  const others = all.filter((one) => one !== band && (one.isBass || band.isBass || one.row === band.row));
  return [
    ...(subsonicHz === undefined ? [] : [{ pass: 'subsonic' as const, hz: subsonicHz, meets: false }]),
    ...(fromHz === undefined
      ? []
      : [{ pass: 'high-pass' as const, hz: fromHz, meets: others.some((one) => one.toHz === fromHz) }]),
    ...(toHz === undefined
      ? []
      : [{ pass: 'low-pass' as const, hz: toHz, meets: others.some((one) => one.fromHz === toHz) }]),
  ];
}

/** Linkwitz-Riley where two groups meet, so that they add up level; Butterworth where nothing meets: 24 dB, common practice. */
function processorFilter({ pass, hz, meets }: Corner, orders: readonly number[]): FilterText {
  const order = orders.includes(4) ? 4 : Math.max(2, ...orders.filter((one) => one < 4 && one % 2 === 0));
  const type = meets && order % 2 === 0 ? 'linkwitz-riley' : 'butterworth';
  return { pass, type, order, corner: hertzText(hz) };
}

/** A corner as a job writes it: `80 Hz`, `3.5 kHz`. */
function hertzText(hz: number): string {
  return hz >= 1000 ? `${Number((hz / 1000).toPrecision(12))} kHz` : writeQuantity(hz, 'frequency');
}

function bandReason({ group, given, fromHz, toHz, subsonicHz }: Band): string {
  const from = fromHz ?? subsonicHz;
  const range = [
    ...(from === undefined ? [] : [`from ${hertz(from)}`]),
    ...(toHz === undefined ? [] : [`up to ${hertz(toHz)}`]),
  ].join(' ');
  return `${group} plays ${range === '' ? 'everything' : range}${given ? ', as it says' : ', by kind and frame'}`;
}

/** The filters of an amplifier's own crossover for the speakers of one of its outputs. */
function amplifierFilters(
  draft: Draft,
  { amplifier, output }: UsedOutput,
  group: DrivenGroup,
  band: Band,
  all: readonly Band[],
): void {
  const [channel = output.name] = output.channels;
  const stem = output.spec.positive.replace(/\+$/, '');
  const where = pairOf(amplifier, stem) ? stem : output.spec.positive;
  if (draft.device(amplifier.id)?.given?.filters[where] || amplifier.origin === 'vehicle') return;
  const own = ownFilters(amplifier, channel);
  const made: FilterText[] = [];
  const switched = new Set<OwnFilter>();
  for (const corner of cornersOf(band, all)) {
    const fit = own.find((one) => one.pass === corner.pass && !switched.has(one));
    const hz = fit && reached(fit, corner, band.given);
    if (fit && hz !== null && hz !== undefined) {
      made.push({ pass: fit.pass, type: fit.type, order: fit.order, corner: hertzText(hz) });
      // One switch stands in one position: what it makes rules its other passes out.
      for (const other of own) if (!other.always && !fit.always) switched.add(other);
    } else if (corner.pass !== 'subsonic') askForFilter(draft, amplifier.id, group, corner, own);
  }
  const why: Why = {
    rule: 'filters',
    reason: `${bandReason(band)}; made by ${amplifier.id} itself`,
    cp: true,
  };
  if (made.length > 0) draft.addAtOutput(amplifier, where, { filters: made }, why);
}

/**
 * The corner that an amplifier sets for one that is asked for (Hz): as asked where its knob reaches it; by the table of
 * bands also the nearest that spares the speaker. Null where it reaches none.
 */
function reached({ fromHz, toHz }: OwnFilter, { pass, hz }: Corner, isGiven: boolean): number | null {
  if (hz >= fromHz && hz <= toHz) return hz;
  if (isGiven) return null;
  if (pass === 'low-pass') return hz > toHz ? null : null;
  return hz < fromHz ? fromHz : null;
}

function askForFilter(
  draft: Draft,
  amplifier: string,
  group: DrivenGroup,
  { pass, hz }: Corner,
  own: readonly OwnFilter[],
): void {
  const path = ['devices', group.id];
  if (draft.undecided.some((one) => one.path.join('.') === path.join('.'))) return;
  const reach = own.find((one) => one.pass === pass);
  const plays = pass === 'low-pass' ? `up to ${hertz(hz)}` : `from ${hertz(hz)}`;
  const can = reach
    ? reach.fromHz === reach.toHz
      ? `can set ${hertz(reach.fromHz)} alone`
      : `can set ${hertz(reach.fromHz)} to ${hertz(reach.toHz)}`
    : `makes no ${pass} there`;
  draft.ask(
    path,
    `${group.id} plays ${plays}, and ${amplifier} ${can}`,
    'add a processor, or write plays: and filters: as its own crossover makes it',
  );
}
