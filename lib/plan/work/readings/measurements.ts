import type { Job } from '../../../model/content/resolved-job.ts';
import { pointer } from '../../../model/place.ts';
import type { PlanMeasurement } from '../../../model/plan/index.ts';
import type { PlanBook } from '../../plan-book.ts';
import { explainReading } from './explain-reading.ts';
import { type Predictable, predictions } from './predictions.ts';
import { readingTraces } from './reading-traces.ts';
import { type Prediction, readingUnits } from './readings.ts';
import { isWithin } from './tolerance.ts';

/**
 * What to measure, from the survey to the hand-over: the prediction with its limits, the reading where the job has
 * one, whether they agree, and where to look where they do not. A reading of another unit, or of no line, is remarked
 * and not compared.
 */
export function planMeasurements(job: Job, plan: Predictable, book: PlanBook): PlanMeasurement[] {
  const lines = predictions(job, plan);
  const readings = takenReadings(job, lines, book);
  const differing = new Set(
    lines
      .filter((line) => {
        const reading = readings.get(line.id);
        return reading !== undefined && isWithin(line, reading) === false;
      })
      .map(({ id }) => id),
  );
  const jointV = job.rules['joint-drop-limit'].value;
  for (const line of lines)
    for (const [side, number] of readingTraces(line)) book.trace(`measurements.${line.id}.${side}`, number);
  return lines.map(({ kind, figures, ...line }): PlanMeasurement => {
    const asBuilt = readings.get(line.id);
    if (asBuilt === undefined) return { ...line, state: 'open', explanation: null };
    const within = isWithin(line, asBuilt);
    if (within !== false)
      return { ...line, asBuilt, state: within === null ? 'open' : 'agrees', explanation: null };
    const explanation = explainReading({
      line: { kind, figures, ...line },
      reading: asBuilt,
      differing,
      jointV,
    });
    return { ...line, asBuilt, state: 'differs', explanation };
  });
}

/** The readings of the job by line, in the line's unit. */
function takenReadings(job: Job, lines: readonly Prediction[], book: PlanBook): ReadonlyMap<string, number> {
  const taken = new Map<string, number>();
  for (const [id, { dimension, value }] of Object.entries(job.file['as-built'])) {
    const line = lines.find((one) => one.id === id);
    const path = pointer(['as-built', id]);
    if (!line) {
      remark(
        book,
        path,
        id,
        'as-built-unknown',
        `${id} is no line of the record, so its reading is compared with nothing`,
        'write it under the name that the record gives the line',
      );
      continue;
    }
    const unit = readingUnits[line.unit];
    if (unit.dimension === dimension) taken.set(id, value * unit.perSi);
    else
      remark(
        book,
        path,
        id,
        'as-built-unit',
        `${id} is read in ${line.unit}, and its reading is a ${dimension}`,
        `write the reading in ${line.unit}`,
      );
  }
  return taken;
}

function remark(
  book: PlanBook,
  path: string,
  id: string,
  rule: 'as-built-unknown' | 'as-built-unit',
  message: string,
  remedy: string,
): void {
  book.remark({ rule, level: 'caution', of: [id], message, remedy }, { path });
}
