import { type FilterOffer, filterOffers, partlyToldText } from '../../audio/filter/filter-offers.ts';
import type { FilterText } from '../../model/content/filter.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { hertz } from '../../model/printed/told.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';
import type { FilterPass } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, pairOf } from '../draft/draft-device.ts';
import type { Band } from './bands.ts';
import { hertzText, shapeOf } from './filter-shape.ts';
import { groupOf } from './inputs.ts';
import type { ProcessorOutput } from './processor-links.ts';
import type { DrivenGroup, SignalChain } from './signal-chain.ts';
import { type UsedOutput, usedOutputs } from './used-outputs.ts';

/** A corner that a band asks for. */
interface Corner {
  readonly pass: FilterPass;
  readonly hz: number;
  /** True where another group begins or ends at it. */
  readonly meets: boolean;
  /** Of a subsonic filter: the lowest corner at which it still guards the cone of its box (Hz). */
  readonly leastHz?: number;
}

/**
 * Writes the filters that make the bands, each at the first of its path that can make it: the processor, the amplifier,
 * the source unit of the job. What no part on the path makes is not proposed.
 */
export function makeBands(
  draft: Draft,
  chain: SignalChain,
  bands: ReadonlyMap<string, Band>,
  outputs: readonly ProcessorOutput[],
): void {
  const all = [...bands.values()];
  for (const { processor, output, group, used } of outputs) {
    const band = bands.get(group.id);
    if (!band || draft.device(processor.id)?.given?.filters[output]) continue;
    const before: Maker = { device: processor, names: [output], at: output, isFirst: true };
    makeBand(draft, { group, band, corners: cornersOf(band, all) }, [before, amplifierMaker(used)]);
  }
  for (const amplifier of chain.amplifiers)
    if (!chain.processorOf.has(amplifier.id) && amplifier.origin === 'job')
      for (const used of usedOutputs(draft, amplifier)) {
        const group = groupOf(chain, used);
        const band = group && bands.get(group.id);
        const maker = amplifierMaker(used);
        if (!group || !band || draft.device(amplifier.id)?.given?.filters[maker.at]) continue;
        makeBand(draft, { group, band, corners: cornersOf(band, all) }, [maker, ...sourceMaker(draft, used)]);
      }
}

/** A place on the path of some speakers at which filters may be written. */
interface Maker {
  readonly device: DraftDevice;
  /** The channels or outputs that it filters. */
  readonly names: readonly string[];
  readonly at: string;
  /** True for a processor, which is there to make the bands. */
  readonly isFirst: boolean;
}

function amplifierMaker({ amplifier, output }: UsedOutput): Maker {
  const [channel = output.name] = output.channels;
  const stem = output.spec.positive.replace(/\+$/, '');
  const at = pairOf(amplifier, stem) ? stem : output.spec.positive;
  return { device: amplifier, names: [channel], at, isFirst: false };
}

/** The output of a source unit of the job that feeds an amplifier; none where the vehicle's own does. */
function sourceMaker(draft: Draft, { amplifier, output }: UsedOutput): readonly Maker[] {
  return draft.linksAt(amplifier.id, output.spec.input).flatMap((id): readonly Maker[] => {
    const link = draft.links[id];
    const ends = link ? [linkEndOf(link.from), linkEndOf(link.to)] : [];
    const from = ends.find(({ device }) => device !== amplifier.id);
    const device = draft.device(from?.device ?? '');
    if (!from || device?.origin !== 'job' || device.spec.kind !== 'source-unit') return [];
    const name = stemName(from.terminal);
    return device.given?.filters[name] ? [] : [{ device, names: [name], at: name, isFirst: false }];
  });
}

/** The speakers that a band is made for, with the corners that it asks for. */
interface Asked {
  readonly group: DrivenGroup;
  readonly band: Band;
  readonly corners: readonly Corner[];
}

function makeBand(draft: Draft, { group, band, corners }: Asked, makers: readonly Maker[]): void {
  let left = corners;
  for (const maker of makers) {
    if (left.length === 0 || draft.device(maker.device.id)?.given?.filters[maker.at]) continue;
    const { made, unmade } = madeBy(maker, left, band.given);
    left = unmade;
    if (made.length === 0) continue;
    const reason = `${bandReason(band)}${maker.isFirst ? '' : `; made by ${maker.device.id} itself`}${lowerText(band, made)}`;
    draft.addAtOutput(maker.device, maker.at, { filters: made }, { rule: 'filters', reason, cp: true });
  }
  for (const corner of left) askForFilter(draft, { group, band }, corner, makers);
}

/** What a place makes of some corners, and which it does not. */
function madeBy(
  { device, names: [name = ''] }: Maker,
  corners: readonly Corner[],
  isGiven: boolean,
): { readonly made: readonly FilterText[]; readonly unmade: readonly Corner[] } {
  const own = filterOffers(device, name);
  const made: FilterText[] = [];
  const unmade: Corner[] = [];
  const switched = new Set<FilterOffer>();
  for (const corner of corners) {
    const fit = own.find((one) => one.pass === corner.pass && !switched.has(one));
    const hz = fit ? reached(fit, corner, isGiven) : null;
    if (!fit || hz === null) {
      unmade.push(corner);
      continue;
    }
    made.push({ pass: fit.pass, ...shapeOf(fit, corner.meets), corner: hertzText(hz) });
    // One switch stands in one position: what it makes rules its other passes out.
    const isSwitch = !fit.always && !fit.inMenu;
    for (const other of isSwitch ? own : []) if (!other.always && !other.inMenu) switched.add(other);
  }
  return { made, unmade };
}

function cornersOf(band: Band, all: readonly Band[]): readonly Corner[] {
  const { fromHz, toHz, subsonicHz, guardsFromHz } = band;
  const others = all.filter((one) => one !== band && (one.isBass || band.isBass || one.row === band.row));
  return [
    ...(subsonicHz === undefined
      ? []
      : [
          {
            pass: 'subsonic' as const,
            hz: subsonicHz,
            meets: false,
            ...(guardsFromHz !== undefined && { leastHz: guardsFromHz }),
          },
        ]),
    ...(fromHz === undefined
      ? []
      : [{ pass: 'high-pass' as const, hz: fromHz, meets: others.some((one) => one.toHz === fromHz) }]),
    ...(toHz === undefined
      ? []
      : [{ pass: 'low-pass' as const, hz: toHz, meets: others.some((one) => one.fromHz === toHz) }]),
  ];
}

/** That a subsonic filter stands lower than asked for, as high as its maker reaches. */
function lowerText({ subsonicHz }: Band, made: readonly FilterText[]): string {
  const own = made.find(({ pass }) => pass === 'subsonic');
  if (!own || subsonicHz === undefined || own.corner === hertzText(subsonicHz)) return '';
  return `; its subsonic filter stands at ${own.corner}, the nearest that it makes`;
}

function bandReason({ group, given, fromHz, toHz, subsonicHz, tableHz }: Band): string {
  const from = fromHz ?? subsonicHz;
  const range = [
    ...(from === undefined ? [] : [`from ${hertz(from)}`]),
    ...(toHz === undefined ? [] : [`up to ${hertz(toHz)}`]),
  ].join(' ');
  const how = given ? 'as it says' : 'by kind and frame';
  const step =
    tableHz === undefined ? '' : `: ${writeQuantity(tableHz, 'frequency')}, up to what a hand sets a knob to`;
  return `${group} plays ${range === '' ? 'everything' : range}, ${how}${step}`;
}

/**
 * The corner that a device sets for one that is asked for (Hz): as asked where it reaches it; by the table of bands also
 * the nearest that spares the speaker, and of a subsonic filter the highest that it reaches where that still guards the
 * cone. Null where it reaches none.
 */
function reached(
  { fromHz, toHz }: FilterOffer,
  { pass, hz, leastHz = hz }: Corner,
  isGiven: boolean,
): number | null {
  if (hz >= fromHz && hz <= toHz) return hz;
  if (isGiven || pass === 'low-pass') return null;
  if (hz > toHz && toHz >= leastHz - 1e-9) return toHz;
  return hz < fromHz ? fromHz : null;
}

/**
 * Asks for what makes a corner: where a device on the path makes such filters and does not reach it, and where the job
 * says what is played. By kind and frame alone nothing is asked: what the path lacks is told where the speaker lacks it.
 */
function askForFilter(
  draft: Draft,
  { group, band }: Omit<Asked, 'corners'>,
  { pass, hz }: Corner,
  makers: readonly Maker[],
): void {
  if (pass === 'subsonic') return;
  const path = ['devices', group.id];
  if (draft.undecided.some((one) => one.path.join('.') === path.join('.'))) return;
  const reach = makers
    .flatMap(({ device, names: [name = ''] }) =>
      filterOffers(device, name).map((offer) => ({ device: device.id, offer })),
    )
    .find(({ offer }) => offer.pass === pass);
  if (!reach && !band.given) return;
  const { fromHz, toHz } = reach?.offer ?? { fromHz: 0, toHz: 0 };
  const plays = pass === 'low-pass' ? `up to ${hertz(hz)}` : `from ${hertz(hz)}`;
  const can =
    fromHz === toHz ? `can set ${hertz(fromHz)} alone` : `can set ${hertz(fromHz)} to ${hertz(toHz)}`;
  const names = [...new Set(makers.map(({ device }) => device.id))];
  const leaflet = `where the leaflet of ${makers.map(({ device }) => device.partId).join(' or ')} has one, write it into that part: a control with filter:, or filter-orders: for a menu`;
  const partly = partlyToldText(
    makers.map(({ device }) => device),
    pass,
  );
  draft.ask(
    path,
    `${group.id} plays ${plays}, and ${reach ? `${reach.device} ${can}` : `${names.join(' and ')} make${names.length === 1 ? 's' : ''} no ${pass} there`}`,
    reach
      ? 'add a processor, or write plays: and filters: as its own crossover makes it'
      : `add a processor that makes a ${pass}, or a lead with one in it; or take plays: out; ${partly ?? leaflet}`,
  );
}
