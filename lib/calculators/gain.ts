import { type GainTarget, gainTarget } from '../audio/gain.ts';
import { type TestTone, testTone } from '../audio/test-tone.ts';
import { isFault } from '../model/fault.ts';
import { quantityAbove } from '../model/fields.ts';
import { printed, printedTone } from '../model/printed/index.ts';
import { decibels } from '../model/printed/told.ts';
import { type Answer, calculator, figureOf } from './calculator.ts';
import { choice, optional, required, ruleField, yesNo } from './field.ts';
import { bandFields, filtersOf } from './filter-fields.ts';

const fields = {
  load: required(quantityAbove('resistance'), { label: 'Load of the channel', initial: '4 ohm' }),
  power: required(quantityAbove('power'), {
    label: 'Rated power into that load',
    hint: 'Of the channel; of the pair where it is bridged.',
    initial: '75 W',
  }),
  speakers: optional(quantityAbove('power'), {
    label: 'The most that its speakers may get',
    hint: 'All on the channel together. Left empty: nothing limits them.',
    initial: '',
  }),
  rated: ruleField('voltage-rated', { label: 'Supply at which the power is rated' }),
  supply: ruleField('voltage-sizing', { label: 'Supply while the gain is set' }),
  regulated: yesNo({ label: 'The amplifier is regulated', initial: 'no' }),
  overlap: ruleField('gain-overlap', { label: 'How far below full scale the tone is recorded' }),
  plays: choice(
    [
      { value: 'others', title: 'All but bass' },
      { value: 'bass', title: 'Bass' },
    ],
    { label: 'The channel plays', initial: 'others' },
  ),
  ...bandFields({ high: '80 Hz', low: '' }),
};

/** The one channel that is asked about. */
const channel = 'this channel';

/** Gain: the voltage to turn a gain control up to, with a test tone on a true-RMS meter. */
export const gainCalculator = calculator({
  id: 'gain',
  title: 'Gain',
  asks: 'Which voltage a gain control is turned up to, with which tone.',
  fields,
  compute: (entries, { rules }) => {
    const tone = testTone({
      channel,
      filters: filtersOf(entries),
      peaks: [],
      usualHz: rules[entries.plays === 'bass' ? 'tone-bass' : 'tone-others'].value,
      overlapDb: entries.overlap,
      lowestDb: rules['tone-lowest'].value,
      nearDb: rules['tone-near-highest'].value,
    });
    if (isFault(tone)) return tone;
    const target = gainTarget({
      channel,
      loadOhm: entries.load,
      powerW: entries.power,
      ...(entries.speakers !== null && { speakersW: entries.speakers }),
      ratedSupplyV: entries.rated,
      supplyV: entries.supply,
      regulated: entries.regulated,
      overlapDb: entries.overlap,
      pathDb: tone.pathDb.value,
    });
    return isFault(target) ? target : answerOf(tone, target);
  },
});

function answerOf(tone: TestTone, target: GainTarget): Answer {
  const { meterV, targetV, targetPowerW, clipV, toneMarginDb, fullScaleMarginDb } = target;
  const meter = printed('gain-voltage', meterV.value);
  return {
    says: `${meter} at ${printedTone(tone.frequencyHz.value)}`,
    minds: [
      'Speakers off, filters as they stand, equalising and boosts flat, a true-RMS meter.',
      ...(fullScaleMarginDb.value < 0
        ? [
            `A full-scale passage is clipped by ${decibels(-fullScaleMarginDb.value)}: the overlap gives that away.`,
          ]
        : []),
    ],
    figures: [
      figureOf('The meter reads', meter, meterV),
      figureOf('Tone', printedTone(tone.frequencyHz.value), tone.frequencyHz),
      figureOf('Level of the tone', printed('level', tone.levelDb.value), tone.levelDb),
      figureOf('Level of the path at the tone', printed('level', tone.pathDb.value), tone.pathDb),
      figureOf('Power that is aimed at', printed('power', targetPowerW.value), targetPowerW),
      figureOf('Voltage that is aimed at', printed('gain-voltage', targetV.value), targetV),
      figureOf('The amplifier clips at', printed('gain-voltage', clipV.value), clipV),
      figureOf('The tone stays below clipping by', printed('level-left', toneMarginDb.value), toneMarginDb),
      figureOf('A full-scale passage by', printed('level-left', fullScaleMarginDb.value), fullScaleMarginDb),
    ],
    steps: [],
  };
}
