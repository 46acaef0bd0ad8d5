import type { Job } from '../../../model/content/resolved-job.ts';
import type { BuildPlan } from '../../../model/plan/index.ts';
import { printed } from '../../../model/printed/index.ts';
import { instruments } from '../../../model/printed/instrument.ts';
import { writeQuantity } from '../../../model/quantity/quantity.ts';
import { fittedFans } from '../../power/fans.ts';
import { mostIdleA } from '../bench-supply-limit.ts';
import type { Prediction } from './readings.ts';
import { sourceLines } from './source-lines.ts';
import { sourcesAt } from './sources-at.ts';
import { surveyLines } from './survey-lines.ts';
import { around } from './tolerance.ts';

/** What readings are predicted from. */
export type Predictable = Pick<BuildPlan, 'power' | 'audio' | 'boards' | 'items'>;

/** Every line of the record, in the order in which it is read. Limits: common practice, no source. */
export function predictions(job: Job, plan: Predictable): Prediction[] {
  return [
    ...surveyLines(job, plan.audio),
    ...benchLines(plan),
    ...plugLines(plan),
    ...supplyLines(job, plan),
    ...fanLines(job),
    ...sourceLines(job, plan),
    ...gainLines(job, plan),
    ...delayLines(job, plan),
    ...lastLines(job, plan),
  ];
}

/** On the bench, before the vehicle: a short is found by the meter, a fault by the limit of the supply. */
function benchLines({ power: { firstPower = [] } }: Predictable): Prediction[] {
  return firstPower.flatMap(({ board, idleA, limitA, oneByOne, late = [] }): Prediction[] => {
    const how = oneByOne ? 'one device after the other, added up' : 'all turned on';
    const without = late.length > 0 ? `, without ${late.join(', ')}` : '';
    const idleLine: Prediction = {
      id: `${board}.idle-current`,
      kind: 'current',
      what: `${board}: current at first power, limit at ${printed('current-allowed', limitA)}, ${how}${without}, no signal`,
      predicted: idleA,
      unit: 'A',
      least: 0.4 * idleA,
      greatest: mostIdleA(idleA),
      when: 'bench',
      figures: [['X, the idle currents of its devices', idleA, 'A']],
    };
    return [
      {
        id: `${board}.positive-to-ground`,
        kind: 'open-circuit',
        what: `${board}: positive to ground, fuses out, after its capacitors took their charge`,
        predicted: null,
        unit: 'ohm',
        least: 1000,
        greatest: null,
        when: 'bench',
        figures: [['least', 1000, 'ohm']],
      },
      // Where nothing that draws stands on the board yet, no power is given on the bench.
      ...(idleA === 0 && late.length > 0 ? [] : [idleLine]),
    ];
  });
}

/**
 * The limits of a resistance, outwards to what an ohmmeter of tenths may show for what lies within them: half a digit on
 * either side, then to the digit.
 */
function asMeterShows(fromOhm: number | null, toOhm: number | null): Pick<Prediction, 'least' | 'greatest'> {
  const perOhm = Math.round(1 / instruments.ohmmeter.finest);
  return {
    least: fromOhm === null ? null : Math.max(0, Math.floor(fromOhm * perOhm - 0.5 + 1e-9) / perOhm),
    greatest: toOhm === null ? null : Math.ceil(toOhm * perOhm + 0.5 - 1e-9) / perOhm,
  };
}

function plugLines({ audio }: Predictable): Prediction[] {
  return audio.channels.flatMap(({ id, loadOhm, dcResistanceOhm }): Prediction[] => {
    if (loadOhm === null) return [];
    const { fromOhm, toOhm } = dcResistanceOhm ?? { fromOhm: null, toOhm: null };
    return [
      {
        id: `${id}.dc-resistance`,
        kind: 'resistance',
        what: `${id}: resistance at the speaker plug, plug off`,
        predicted: fromOhm === null ? null : (fromOhm + toOhm) / 2,
        unit: 'ohm',
        ...asMeterShows(fromOhm, toOhm),
        when: 'before-power',
        figures:
          fromOhm === null
            ? []
            : [
                ['from', fromOhm, 'ohm', `audio.channels.${id}.dcResistanceOhm.fromOhm`],
                ['to', toOhm, 'ohm', `audio.channels.${id}.dcResistanceOhm.toOhm`],
              ],
      },
    ];
  });
}

/**
 * At the points that can be held beside a meter: the voltage at each device, and with music also the drop of its feed
 * and of its ground. Each lies between what the supply at its weakest and at its strongest gives, and what a meter adds.
 */
function supplyLines(job: Job, { power }: Predictable): Prediction[] {
  const toleranceV = job.rules['reading-tolerance'].value;
  const held = power.points.filter(({ reach }) => reach !== undefined);
  return held
    .toSorted((a, b) => Number(b.name === 'rest') - Number(a.name === 'rest'))
    .flatMap(({ name: point, title, reach }) =>
      power.drops
        .filter((drop) => drop.point === point)
        .flatMap((drop): Prediction[] => {
          const { item, currentA, bands } = drop;
          const plays = point === 'music' || point === 'engine-off';
          const drawn =
            plays && currentA !== undefined ? `, ${printed('current-carried', currentA)} in its feed` : '';
          const line = (
            kind: 'supply' | 'feed-drop' | 'ground-drop',
            what: string,
            predicted: number | null,
            band: { readonly from: number; readonly to: number } | null | undefined,
          ): Prediction[] => {
            if (predicted === null) return [];
            const { from, to } = band ?? { from: predicted, to: predicted };
            const least = from - toleranceV;
            return [
              {
                id: `${item}.${kind === 'supply' ? 'voltage' : kind}.${point}`,
                kind,
                what: `${item}: ${what}. ${title}: ${reach}${drawn}`,
                predicted,
                unit: 'V',
                // A drop or a voltage that is above zero is not asked to be below it.
                least: predicted >= 0 ? Math.max(0, least) : least,
                greatest: to + toleranceV,
                // Under load only once gains and filters are set: a tweeter must not meet full power before.
                when: point === 'rest' ? 'power' : 'load',
                figures: [
                  ['X', predicted, 'V'],
                  ['from', from, 'V'],
                  ['to', to, 'V'],
                  ['tolerance', toleranceV, 'V'],
                ],
              },
            ];
          };
          return [
            ...line('supply', 'supply voltage', drop.voltageV, bands?.voltageV),
            ...(plays
              ? [
                  ...line('feed-drop', 'drop of the feed', drop.feedDropV, bands?.feedDropV),
                  ...line('ground-drop', 'drop of the ground', drop.groundDropV, bands?.groundDropV),
                ]
              : []),
          ];
        }),
    );
}

/** What each fan draws as it runs: a fan that draws nothing stands, one that draws much more is held or blocked. */
function fanLines(job: Job): Prediction[] {
  return fittedFans(job).map(({ item, drawA }) => ({
    id: `${item}.current`,
    kind: 'current',
    what: `${item}: current of the fan, system on`,
    predicted: drawA,
    unit: 'A',
    least: 0.5 * drawA,
    greatest: 1.5 * drawA,
    when: 'power',
    figures: [['X', drawA, 'A']],
  }));
}

function gainLines(job: Job, { audio }: Predictable): Prediction[] {
  const { rules } = job;
  const sources = sourcesAt(job)
    .map((one) => `, ${one}`)
    .join('');
  return audio.channels.flatMap(({ id, loadOhm, gainVoltageV, toneHz, gain }): Prediction[] => {
    if (loadOhm === null) return [];
    const path =
      gain?.state === 'equalising-flat' ? 'filters loaded, equalising and boost flat' : 'filters loaded';
    return [
      {
        id: `${id}.gain`,
        kind: 'gain',
        what: `${id}: gain voltage, ${writeQuantity(toneHz, 'frequency')} tone, speakers off, ${path}${sources}`,
        predicted: gainVoltageV,
        unit: 'V',
        // Below the figure is good enough; above it the amplifier clips or the speaker has too much.
        least: gainVoltageV === null ? null : (1 - rules['gain-under'].value) * gainVoltageV,
        greatest: gainVoltageV,
        when: 'gains',
        figures:
          gainVoltageV === null
            ? []
            : [
                ['X', gainVoltageV, 'V', `audio.channels.${id}.gainVoltageV`],
                ['u', rules['gain-under'].value],
              ],
      },
    ];
  });
}

function delayLines(job: Job, { audio }: Predictable): Prediction[] {
  const toleranceMs = 1000 * job.rules['delay-tolerance'].value;
  return audio.speakers.flatMap(({ id, delayMs, delaySamples }): Prediction[] => {
    if (delayMs === null || delaySamples === null) return [];
    const shared = audio.sharedDelays.find(({ off }) => off.some(({ speaker }) => speaker === id));
    const at = shared ? `, shared at ${shared.outputs.join(' and ')}` : '';
    return [
      {
        id: `${id}.delay`,
        kind: 'delay',
        what: `${id}: delay as set, ${delaySamples} samples${at}`,
        predicted: delayMs,
        unit: 'ms',
        ...around(delayMs, toleranceMs),
        when: 'delays',
        figures: [
          ['X', delayMs, 'ms', `audio.speakers.${id}.delayMs`],
          ['tolerance', toleranceMs, 'ms'],
        ],
      },
    ];
  });
}

/** Noise is sought from the amplifier back to the source; key-off draw once the vehicle's modules sleep. */
function lastLines(job: Job, plan: Predictable): Prediction[] {
  return [
    ...noiseLines(job, plan),
    {
      id: 'key-off-draw',
      kind: 'current',
      what: `Draw with the key off, ${printed('time-needed', job.rules['key-off-wait'].value / 60)} or more after locking`,
      predicted: plan.power.keyOff?.drawA ?? null,
      unit: 'A',
      least: null,
      greatest: job.rules['key-off-draw'].value,
      when: 'load',
      figures: [
        ['X', plan.power.keyOff?.drawA ?? 'not known', 'A', 'power.keyOff.drawA'],
        ['the most that is allowed', job.rules['key-off-draw'].value, 'A'],
      ],
    },
  ];
}

/** True for a device with an input that a bridged speaker output feeds: neither side of it may touch ground or the other. */
function takesSpeakerLevel({ inputs }: Predictable['audio'], id: string): boolean {
  return inputs.some(({ input, level }) => level === 'high' && input.startsWith(`${id}.`));
}

/** With the inputs of each amplifier shorted, or open where they take speaker level, then those of the processor, then the source on: alternating volts. */
function noiseLines({ rules }: Pick<Job, 'rules'>, { audio, items }: Predictable): Prediction[] {
  const amplifiers = [...new Set(audio.channels.map(({ amplifier }) => amplifier))];
  const [processor] = items.filter(({ kind, origin }) => kind === 'processor' && origin === 'job');
  const lines = (name: string, limitV: number, how: (id: string) => string): Prediction[] =>
    amplifiers.map((id) => ({
      id: `${id}.${name}`,
      kind: 'noise',
      what: `${id}: noise at a speaker output, ${how(id)}`,
      predicted: null,
      unit: 'mV',
      least: null,
      greatest: 1000 * limitV,
      when: 'load',
      figures: [['greatest', 1000 * limitV, 'mV']],
    }));
  const quietV = rules['noise-quiet'].value;
  const silenced = (id: string, whose: string) =>
    takesSpeakerLevel(audio, id)
      ? `inputs of ${whose} left open, none shorted or grounded, radio off, engine off`
      : `shorting plugs at the inputs of ${whose}, engine off`;
  return [
    ...lines('noise-shorted', quietV, (id) => silenced(id, id)),
    ...(processor ? lines('noise-processor', quietV, () => silenced(processor.id, processor.id)) : []),
    ...lines(
      'noise-running',
      rules['noise-running'].value,
      () => 'source on, 2,000 rpm, lights and blower on',
    ),
  ];
}
