import type { Job } from '../../../model/content/resolved-job.ts';
import type { PlanAudio, PlanOutput } from '../../../model/plan/index.ts';
import { alternatorsOf, varyingCharge } from '../../../power/network/varying-charge.ts';
import type { Prediction } from './readings.ts';
import { around } from './tolerance.ts';

const when = 'survey';

/** What is read before the plan stands: the battery, its charging, and what is not known of the source. */
export function surveyLines(job: Job, { outputs, inputs }: PlanAudio): Prediction[] {
  const source = outputs
    .filter(({ feeds }) => feeds.length > 0)
    .flatMap((output) => {
      const fed = inputs.find((input) => input.output === output.id || input.output === `${output.id}+`);
      return outputLines(output, fed?.sourceV ?? null);
    });
  return [...batteryLines(job), ...source];
}

/** What a sound battery and its charging read, within the limits of the house rules. */
function batteryLines({ rules, devices, vehicle }: Pick<Job, 'rules' | 'devices' | 'vehicle'>): Prediction[] {
  // Lithium rests higher than lead, by its chemistry: its maker's figure counts.
  const isLead = !devices.some(({ spec }) => spec?.kind === 'battery' && spec.chemistry === 'lithium');
  return [
    {
      id: 'battery-rest',
      kind: 'battery-rest',
      what: 'Battery at rest',
      predicted: rules['voltage-rested'].value,
      unit: 'V',
      least: rules['check-in-rested'].value,
      greatest: isLead ? rules['check-in-rested-most'].value : null,
      when,
      figures: [
        ['X', rules['voltage-rested'].value, 'V'],
        ['least', rules['check-in-rested'].value, 'V'],
      ],
    },
    chargingLine({ rules, devices, vehicle }),
    {
      id: 'battery-ripple',
      kind: 'charging',
      what: 'Ripple at the battery, engine at 1,500 rpm, alternating volts',
      predicted: null,
      unit: 'V',
      least: null,
      greatest: rules['check-in-ripple'].value,
      when,
      figures: [['greatest', rules['check-in-ripple'].value, 'V']],
    },
  ];
}

/**
 * What the battery reads while it is charged: as it was read in this vehicle, else what its alternator is set to, else the
 * house rule for rated power. One that varies its voltage holds any of its range.
 */
function chargingLine({ rules, devices, vehicle }: Pick<Job, 'rules' | 'devices' | 'vehicle'>): Prediction {
  const alternators = alternatorsOf(devices);
  const varying = varyingCharge({ devices, rules, vehicle });
  const [told] = alternators.flatMap((one) => one['set-point'] ?? []);
  const readV = alternators.length > 0 ? vehicle['charging-voltage'] : undefined;
  const predicted = varying ? null : (readV ?? told ?? rules['voltage-rated'].value);
  const least = varying?.lowV ?? rules['check-in-charging-least'].value;
  const greatest = varying?.highV ?? rules['check-in-charging-most'].value;
  return {
    id: 'battery-charging',
    kind: 'charging',
    what: 'Battery, engine at 1,500 rpm',
    predicted,
    unit: 'V',
    least,
    greatest,
    when,
    figures: [
      ...(predicted === null ? [] : [['X', predicted, 'V'] as const]),
      ['least', least, 'V'],
      ['greatest', greatest, 'V'],
    ],
  };
}

/** Readings for what is missing of one output; the clean voltage beside what its part says. */
function outputLines({ id, missing, cleanVoltageV }: PlanOutput, givenV: number | null): Prediction[] {
  const line = (name: string, what: string, unit: 'V' | 'Hz', predicted: number | null): Prediction => ({
    id: `${id}.${name}`,
    kind: 'source',
    what: `${id}: ${what}`,
    predicted,
    unit,
    ...around(predicted, 0.25 * (predicted ?? 0)),
    when,
    figures: predicted === null ? [] : [['X', predicted, unit]],
  });
  return [
    ...(cleanVoltageV === null ? [line('clean-voltage', 'greatest clean voltage, RMS', 'V', givenV)] : []),
    ...(missing.includes('direct-current offset')
      ? [line('offset', 'direct-current offset to ground', 'V', null)]
      : []),
    ...(missing.includes('bandwidth')
      ? [
          line('lowest', 'lowest frequency, 3 dB down', 'Hz', null),
          line('highest', 'highest frequency, 3 dB down', 'Hz', null),
        ]
      : []),
  ];
}
