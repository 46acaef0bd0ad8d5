import type { PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import { filterNames } from '../../model/vocabulary.ts';
import { carriedSides } from '../../plan/audio/carried-sides.ts';
import { type LeftAndRight, leftAndRightSpeakers } from '../../plan/audio/left-and-right-speakers.ts';
import { feedOf } from '../../plan/audio/signal-feed.ts';
import { channelInputs, feedFilters } from '../../plan/audio/signal-path.ts';
import { devicesById } from '../../plan/wiring/conductor-role.ts';
import { deviceIdOf, deviceOf, deviceSpot, terminalNameOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { decibels, hertz, listed, ohms, volts, watts } from '../words.ts';

/** A pair whose speakers hang on a channel each. */
interface ChannelPair {
  readonly pair: LeftAndRight;
  readonly left: PlanChannel;
  readonly right: PlanChannel;
}

function channelPairs({ job, plan }: Case): readonly ChannelPair[] {
  const channelOf = (speaker: string) =>
    plan.audio.channels.find(({ speakers }) => speakers.includes(speaker));
  return leftAndRightSpeakers(job).flatMap((pair): ChannelPair[] => {
    const [left, right] = [channelOf(pair.left.id), channelOf(pair.right.id)];
    return left && right && left.id !== right.id ? [{ pair, left, right }] : [];
  });
}

const filterText = ({ pass, type, order, cornerHz }: PlanFilter) =>
  `${pass} at ${hertz(cornerHz)} (${filterNames[type]}, ${6 * order} dB per octave)`;

/** What filters do, whatever they stand at and in whatever order. */
const shapesOf = (filters: readonly PlanFilter[]): string[] => filters.map(filterText).toSorted();

const inWords = (shapes: readonly string[]) => (shapes.length === 0 ? 'no filter' : listed(shapes));

/** What one list has and the other has not; the same filter twice counts twice. */
function without(shapes: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return shapes.filter((shape) => {
    const at = left.indexOf(shape);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** Where the filter that only one of two sides has is written, or the device of the other's. */
function filterSpot({ job }: Case, one: PlanChannel, other: PlanChannel): Spot {
  const shapes = shapesOf(other.filters);
  const own = one.filters.find((filter) => !shapes.includes(filterText(filter)));
  const where = own?.where ?? one.filters[0]?.where ?? other.filters[0]?.where ?? `${one.amplifier}.`;
  return deviceSpot(job, deviceIdOf(where), 'filters', terminalNameOf(where));
}

const filteredDifferently: Rule = {
  id: 'pair-filtered-differently',
  judge(about) {
    return channelPairs(about).flatMap(({ pair, left, right }): Verdict<'pair-filtered-differently'>[] => {
      const [lefts, rights] = [shapesOf(left.filters), shapesOf(right.filters)];
      const [onlyLeft, onlyRight] = [without(lefts, rights), without(rights, lefts)];
      if (onlyLeft.length === 0 && onlyRight.length === 0) return [];
      return [
        {
          level: 'caution',
          of: [left.id, right.id, pair.left.id, pair.right.id],
          message: `${pair.left.id} and ${pair.right.id} are a pair and are filtered differently: ${left.id} has ${inWords(onlyLeft)} where ${right.id} has ${inWords(onlyRight)}`,
          remedy: 'write the same filters for both sides',
          ...filterSpot(
            about,
            ...(onlyLeft.length > 0 ? ([left, right] as const) : ([right, left] as const)),
          ),
        },
      ];
    });
  },
};

const levelText = ({ id, gain, powerW, loadOhm }: PlanChannel) =>
  `${id} ${volts(gain?.targetV ?? Number.NaN)}${powerW === null || loadOhm === null ? '' : ` (${watts(powerW)} into ${ohms(loadOhm)})`}`;

const levelsDiffer: Rule = {
  id: 'pair-levels-differ',
  judge(about) {
    const shiftDb = about.job.rules['level-shift'].value;
    return channelPairs(about).flatMap(({ pair, left, right }): Verdict<'pair-levels-differ'>[] => {
      if (!left.gain || !right.gain) return [];
      const apartDb = 20 * Math.abs(Math.log10(left.gain.targetV / right.gain.targetV));
      if (apartDb <= shiftDb + 1e-9) return [];
      return [
        {
          level: 'caution',
          of: [left.id, right.id, pair.left.id, pair.right.id],
          message: `${pair.left.id} and ${pair.right.id} are a pair and get different levels: ${levelText(left)}, ${levelText(right)}, ${decibels(Number(apartDb.toFixed(1)))} apart`,
          value: apartDb,
          limit: shiftDb,
          unit: 'dB',
          remedy: 'drive both by like channels and wire them alike, or set both gains to the lower voltage',
          ...deviceSpot(about.job, left.amplifier),
        },
      ];
    });
  },
};

/** A channel of one side whose signal is written to be of the other. */
interface Swapped {
  readonly channel: PlanChannel;
  readonly speakers: readonly string[];
  readonly side: string;
  readonly carried: string;
  readonly by: readonly string[];
  readonly spot: Spot;
}

/** Bass is mono to the ear, and is left aside. */
function swappedChannels(about: Case): readonly Swapped[] {
  const { job, plan } = about;
  const devices = devicesById(job);
  return plan.audio.channels.flatMap((channel): Swapped[] => {
    const own = channel.speakers.flatMap((id) => deviceOf(job, id) ?? []);
    const sides = new Set(own.map(({ side }) => side));
    const [side] = sides;
    const isBass = own.some(({ spec }) => spec?.kind === 'speaker' && spec.band === 'subwoofer');
    if (isBass || sides.size !== 1 || side === undefined || side === 'middle') return [];
    const carried = carriedSides(job, devices, channel);
    const opposite = side === 'left' ? 'right' : 'left';
    const wrong = carried.filter((one) => one.side === opposite);
    const [first] = wrong;
    // What the source gives goes before the conductor that a lead happened to offer.
    const bySource = carried.filter(({ at }) => 'device' in at);
    const decides = bySource.length > 0 ? bySource : carried;
    if (!first || decides.some((one) => one.side !== opposite)) return [];
    const spot = 'link' in first.at ? wireSpot(about, first.at.link) : deviceSpot(job, first.at.device);
    const feeding = channelInputs(job, channel).flatMap((input) => feedOf(job, input) ?? []);
    const wire = plan.wires.find(({ from, to }) =>
      feeding.some(({ device, terminal }) => [from, to].includes(`${device}.${terminal}`)),
    );
    return [
      {
        channel,
        speakers: own.map(({ id }) => id),
        side,
        carried: opposite,
        by: wrong.map(({ by }) => by),
        spot: wire ? wireSpot(about, wire.id) : spot,
      },
    ];
  });
}

const sidesSwapped: Rule = {
  id: 'sides-swapped',
  judge(about) {
    const swapped = swappedChannels(about);
    const pairs = channelPairs(about);
    const fellowOf = ({ channel }: Swapped) => {
      const pair = pairs.find(({ left, right }) => [left.id, right.id].includes(channel.id));
      return swapped.find(
        (other) =>
          other.channel.id !== channel.id && pair && [pair.left.id, pair.right.id].includes(other.channel.id),
      );
    };
    const told = new Set<string>();
    return swapped.flatMap((one): Verdict<'sides-swapped'>[] => {
      if (told.has(one.channel.id)) return [];
      const fellow = fellowOf(one);
      const all = fellow ? [one, fellow] : [one];
      for (const { channel } of all) told.add(channel.id);
      const texts = all.map(
        ({ speakers, side, carried, by }) =>
          `${listed(speakers)} on the ${side} plays the ${carried} signal of ${listed(by)}`,
      );
      return [
        {
          level: 'caution',
          of: all.flatMap(({ channel, speakers, by }) => [channel.id, ...speakers, ...by]),
          message: `${fellow ? 'the sides are swapped' : 'a side is swapped'}: ${texts.join('; ')}`,
          remedy: fellow
            ? 'swap the two links at the inputs, or correct side: or carries: of the outputs'
            : 'link the signal of its own side to it, or correct side: or carries: of the output',
          ...one.spot,
        },
      ];
    });
  },
};

const summedDiffer: Rule = {
  id: 'summed-inputs-differ',
  judge({ job, plan }) {
    const devices = devicesById(job);
    return plan.audio.channels.flatMap((channel): Verdict<'summed-inputs-differ'>[] => {
      const inputs = channelInputs(job, channel).flatMap((input) => {
        const feeding = feedOf(job, input);
        return feeding ? [{ feeding, filters: shapesOf(feedFilters(job, devices, input)) }] : [];
      });
      const [first, ...others] = inputs;
      const odd = others.find(({ filters }) => filters.join() !== first?.filters.join());
      if (!first || !odd) return [];
      const names = [first, odd].map(({ feeding }) => `${feeding.device}.${feeding.terminal}`);
      return [
        {
          level: 'caution',
          of: [channel.id, ...names],
          message: `${channel.id} adds ${listed(names)}, which are filtered differently: ${inWords(first.filters)} on the first, ${inWords(odd.filters)} on the second; the gain voltage holds for the first alone`,
          remedy: 'write the same filters for both',
          ...deviceSpot(job, odd.feeding.device, 'filters', odd.feeding.terminal),
        },
      ];
    });
  },
};

export const leftAndRightRules: readonly Rule[] = [
  filteredDifferently,
  levelsDiffer,
  summedDiffer,
  sidesSwapped,
];
