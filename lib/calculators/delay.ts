import { type SpeakerDelay, speakerDelays, speedOfSound } from '../audio/delay.ts';
import { faultOf, isFault } from '../model/fault.ts';
import { extent, quantityWithin } from '../model/fields.ts';
import { printed, printedTone } from '../model/printed/index.ts';
import { printedLength } from '../model/printed/lengths.ts';
import type { Bench } from './bench.ts';
import { type AnswerTable, calculator, figureOf, type ValuesOf } from './calculator.ts';
import { type Field, type Initial, optional, required, ruleField } from './field.ts';
import { lengthExample } from './run-fields.ts';

const distance = (n: number, initial: Initial): Field<number | null> =>
  optional(extent, { label: `Speaker ${n}, to between the ears`, initial });

const fields = {
  speaker1: distance(1, lengthExample('42 in', '107 cm')),
  speaker2: distance(2, lengthExample('58 in', '147 cm')),
  speaker3: distance(3, lengthExample('68 1/2 in', '174 cm')),
  speaker4: distance(4, ''),
  speaker5: distance(5, ''),
  speaker6: distance(6, ''),
  speaker7: distance(7, ''),
  speaker8: distance(8, ''),
  air: ruleField('air-temperature', { label: 'Air in the cabin' }),
  rate: required(quantityWithin('frequency', { least: 8000, most: 800_000 }), {
    label: 'Sampling rate of the processor',
    hint: 'It begins with that of the first processor of the catalogue.',
    initial: ({ shop }) => (shop.sampleRateHz === undefined ? '' : printedTone(shop.sampleRateHz)),
  }),
};
type Entries = ValuesOf<typeof fields>;

/** Delay: what lets the sound of each speaker arrive with that of the farthest one. */
export const delayCalculator = calculator({
  id: 'delay',
  title: 'Delay',
  asks: 'Which delay lets each speaker arrive with the farthest one.',
  fields,
  compute: (entries, bench) => {
    const speakers = distancesOf(entries);
    if (speakers.length < 2)
      return faultOf(
        'distances-too-few',
        ['speaker2'],
        'a delay holds between speakers, and fewer than two distances are written',
        'write the distance of two speakers or more',
      );
    const speed = speedOfSound(entries.air);
    const delays = speakerDelays({ speakers, airC: entries.air, sampleRateHz: entries.rate });
    if (isFault(speed)) return speed;
    if (isFault(delays)) return delays;
    const farthest = delays.filter(({ delayMs }) => delayMs.value === 0).map(({ speaker }) => speaker);
    return {
      says: delays.map(({ speaker, delayMs }) => `${speaker}: ${printed('delay', delayMs.value)}`).join('; '),
      minds: [
        `Farthest: ${farthest.join(' and ')}. Measure from the middle of each cone to between the ears.`,
      ],
      figures: delays.map((one) =>
        figureOf(one.speaker, printed('delay', one.delayMs.value), one.delayMs, samples(one)),
      ),
      steps: [
        { label: 'Speed of sound', trace: speed.trace },
        ...delays.slice(0, 1).map(({ speaker, delaySamples }) => {
          return { label: `Samples of ${speaker}`, trace: delaySamples.trace };
        }),
      ],
      table: tableOf(delays, speakers, bench),
    };
  },
});

const samples = ({ delaySamples }: SpeakerDelay): string => `${delaySamples.value} samples`;

/** The speakers whose distance is written, by their numbers. */
function distancesOf(entries: Entries): { readonly speaker: string; readonly distanceM: number }[] {
  const { speaker1, speaker2, speaker3, speaker4, speaker5, speaker6, speaker7, speaker8 } = entries;
  return [speaker1, speaker2, speaker3, speaker4, speaker5, speaker6, speaker7, speaker8].flatMap(
    (distanceM, k) => (distanceM === null ? [] : [{ speaker: `speaker ${k + 1}`, distanceM }]),
  );
}

function tableOf(
  delays: readonly SpeakerDelay[],
  speakers: readonly { readonly distanceM: number }[],
  { style }: Bench,
): AnswerTable {
  return {
    caption: 'What is set',
    columns: [
      { title: 'Speaker' },
      { title: 'Distance', isFigure: true },
      { title: 'Delay', isFigure: true },
      { title: 'Samples', isFigure: true },
    ],
    rows: delays.map(({ speaker, delayMs, delaySamples }, k) => [
      speaker,
      printedLength('measured', speakers[k]?.distanceM ?? 0, style).primary,
      printed('delay', delayMs.value),
      String(delaySamples.value),
    ]),
  };
}
