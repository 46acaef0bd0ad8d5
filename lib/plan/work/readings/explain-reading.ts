import { millivoltsAllowed, times } from '../../../model/printed/told.ts';
import { explainSource } from './explain-source.ts';
import type { Difference, Explain, ReadingKind } from './readings.ts';

const isNear = (ratio: number | null, target: number) =>
  ratio !== null && Math.abs(ratio / target - 1) <= 0.15;
/** Three times or more, a rounding error in the quotient aside. */
const isThreefold = (ratio: number) => ratio >= 3 - 1e-9;

/**
 * What a difference points at, by kind of reading. Common practice, no source: a joint adds to a drop several times
 * over, a longer or thinner conductor by tens of per cent; halves and doubles of resistance are coils joined otherwise.
 */
const explain: Readonly<Record<ReadingKind, Explain>> = {
  'battery-rest': ({ line, reading }) =>
    reading > (line.greatest ?? Number.POSITIVE_INFINITY)
      ? 'it is not at rest: something charges it, or it was just charged. Let it stand with all off and read again'
      : 'charge and test the battery before anything else is judged: every other voltage hangs on it',
  charging: ({ line, reading }) =>
    reading < (line.least ?? 0)
      ? 'look at belt, alternator, charge lead and its grounds first, with the audio off'
      : 'the regulator or its sense line is at fault: do not connect amplifiers to it',
  supply: ({ line, differing, reading }, ratio) => {
    const point = line.id.split('.').at(-1) ?? '';
    const item = line.id.split('.')[0] ?? '';
    const dropDiffers = ['feed-drop', 'ground-drop'].some((what) =>
      differing.has(`${item}.${what}.${point}`),
    );
    if (reading > (line.greatest ?? Number.POSITIVE_INFINITY))
      return 'less current flowed than was reckoned with, or the charging voltage is higher: read battery and current at the same time';
    if (dropDiffers) return 'the drop of its feed or ground differs too: mend that first, then read again';
    if (point === 'rest')
      return `the battery is low, or a joint is bad${ratio === null ? '' : ` (${times(ratio)} the prediction)`}: read at the battery posts at the same time`;
    return point === 'music'
      ? 'low at idle with the drops as predicted: points at the charging, not at the wiring; read the battery posts at the same time'
      : 'the drops are as predicted, so the source is low: read the battery posts at the same time';
  },
  'feed-drop': ({ jointV }, ratio) => {
    if (ratio !== null && isThreefold(ratio))
      return `${times(ratio)} the prediction points at one joint of the feed: measure across each fuse, joint and set screw on its way in turn; ${millivoltsAllowed(jointV * 1000)} is the most for one`;
    if (ratio !== null && ratio < 1)
      return 'less current flowed than was reckoned with: read again at the stated load';
    return 'longer, thinner or other conductor than planned, or more current: compare the wire with its label and read the current';
  },
  'ground-drop': (_, ratio) => {
    if (ratio !== null && isThreefold(ratio))
      return `${times(ratio)} the prediction points at the joint: clean the ground point to bare metal, serrated washer, torque, and read again`;
    if (ratio !== null && ratio < 1)
      return 'less current flowed than was reckoned with: read again at the stated load';
    return 'a longer or thinner ground lead than planned, or paint under one of its lugs';
  },
  resistance: ({ reading }, ratio) => {
    if (reading < 0.2) return 'a short: look for strands that touch at the plug and at the coil posts';
    if (ratio !== null && ratio > 10)
      return 'open: look for a plug off its tab, a jumper left out, or a dead coil';
    if (isNear(ratio, 0.5))
      return 'half the prediction points at coils in parallel that should be in series, or at a second speaker on the pair';
    if (isNear(ratio, 0.25))
      return 'a quarter of the prediction points at all coils in parallel that should be in series';
    if (isNear(ratio, 2))
      return 'double the prediction points at coils in series that should be in parallel, at one coil left open, or at a speaker of twice the resistance';
    if (isNear(ratio, 4))
      return 'four times the prediction points at all coils in series that should be in parallel';
    return 'another speaker than planned, or resistance in the wire: read at the coil posts themselves, leads shorted first';
  },
  'open-circuit': () =>
    'a conductor touches the body or a fuse is fitted: take the layers off one by one until it reads open; no power before that',
  current: ({ line, reading }) =>
    reading > (line.greatest ?? Number.POSITIVE_INFINITY)
      ? 'more than the devices draw at idle: unplug them one by one; the one that brings it down is at fault'
      : 'less than the devices draw at idle: one has not turned on; follow its turn-on wire',
  gain: ({ line, reading }) =>
    reading > (line.greatest ?? Number.POSITIVE_INFINITY)
      ? 'set too high: turn the gain back before a speaker is connected'
      : 'not reached: the supply is low, the source is not at its clean level, or a filter shuts the tone out; never turn past the stop',
  delay: () =>
    'a whole sample off is rounding; more is a wrong speaker on the output, or a distance measured anew',
  noise: ({ line, differing }) => {
    const item = line.id.split('.')[0] ?? '';
    if (line.id === `${item}.noise-shorted`)
      return 'noise with nothing at the inputs is made in the amplifier or comes over its supply: read its ground drop, move its feed from the signal';
    if (differing.has(`${item}.noise-shorted`))
      return 'noisy with nothing at its inputs already: mend that first, then read again';
    return line.id === `${item}.noise-processor` || differing.has(`${item}.noise-processor`)
      ? 'quiet with nothing at the amplifier: the noise comes in at the processor or its leads; compare their grounds'
      : 'quiet with nothing at the inputs, so the noise comes from the source or its leads: source off, then its plugs off one by one';
  },
  source: () =>
    'not what the data of the source say: write the reading into the vehicle file and plan again before the gains are set',
  ...explainSource,
};

/** Where to look for the cause of a reading outside its limits, in one sentence. */
export function explainReading(difference: Difference): string {
  const { predicted } = difference.line;
  const ratio = predicted === null || predicted === 0 ? null : difference.reading / predicted;
  return explain[difference.line.kind](difference, ratio);
}
