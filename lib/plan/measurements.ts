import type { BuildPlan, PlanMeasurement } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';

interface Prediction {
  readonly id: string;
  readonly what: string;
  readonly predicted: number | null;
  readonly unit: string;
  /** How far a reading may be off before it is said to differ. */
  readonly tolerance: number;
}

/** What to measure at hand-over: the prediction, the reading where the job has one, and whether they agree. */
export function planMeasurements(
  job: Job,
  { power, audio }: Pick<BuildPlan, 'power' | 'audio'>,
): PlanMeasurement[] {
  const predictions = [...supplyPredictions(job, power), ...audioPredictions(audio)];
  return predictions.map(({ id, what, predicted, unit, tolerance }): PlanMeasurement => {
    const asBuilt = job.file['as-built'][id]?.value;
    const base = { id, what, predicted, unit };
    if (asBuilt === undefined || predicted === null)
      return { ...base, ...(asBuilt === undefined ? {} : { asBuilt }), state: 'open' };
    return { ...base, asBuilt, state: Math.abs(asBuilt - predicted) <= tolerance ? 'agrees' : 'differs' };
  });
}

function supplyPredictions(job: Job, { drops, points }: BuildPlan['power']): Prediction[] {
  const atRest: Prediction = {
    id: 'battery-rest',
    what: 'Battery at rest',
    predicted: job.rules['voltage-rested'].value,
    unit: 'V',
    tolerance: 0.2,
  };
  const titles = new Map(points.map(({ name, title }) => [name, title]));
  return [
    atRest,
    ...drops
      .filter(({ point }) => point === 'rated-power' || point === 'music')
      .flatMap(({ point, item, voltageV, feedDropV, groundDropV }): Prediction[] => {
        const title = titles.get(point) ?? point;
        return [
          {
            id: `${item}.voltage.${point}`,
            what: `${item}: supply voltage. ${title}`,
            predicted: voltageV,
            unit: 'V',
            tolerance: 0.3,
          },
          {
            id: `${item}.feed-drop.${point}`,
            what: `${item}: drop of the feed. ${title}`,
            predicted: feedDropV,
            unit: 'V',
            tolerance: 0.05,
          },
          {
            id: `${item}.ground-drop.${point}`,
            what: `${item}: drop of the ground. ${title}`,
            predicted: groundDropV,
            unit: 'V',
            tolerance: 0.05,
          },
        ];
      }),
  ];
}

function audioPredictions({ channels }: BuildPlan['audio']): Prediction[] {
  return channels
    .filter(({ loadOhm }) => loadOhm !== null)
    .flatMap(({ id, gainVoltageV, toneHz, dcResistanceOhm }): Prediction[] => {
      const ohm = dcResistanceOhm ? (dcResistanceOhm.fromOhm + dcResistanceOhm.toOhm) / 2 : null;
      const within = dcResistanceOhm ? (dcResistanceOhm.toOhm - dcResistanceOhm.fromOhm) / 2 : 0;
      return [
        {
          id: `${id}.dc-resistance`,
          what: `${id}: resistance at the speaker plug`,
          predicted: ohm,
          unit: 'ohm',
          tolerance: within,
        },
        {
          id: `${id}.gain`,
          what: `${id}: gain voltage, ${toneHz} Hz tone, speakers off`,
          predicted: gainVoltageV,
          unit: 'V',
          tolerance: (gainVoltageV ?? 0) * 0.05,
        },
      ];
    });
}
