import { commonPractice, type Traced, traced } from '../../../model/trace.ts';
import type { Prediction, ReadingKind } from './readings.ts';

/** How the prediction of a kind of reading, and its limits, follow from the figures of its line. */
interface Formulas {
  readonly predicted: string;
  readonly least: string;
  readonly greatest: string;
}

const solved: Formulas = {
  predicted: 'X, as solved at the point',
  least: 'from - tolerance, not below 0 where X is above it',
  greatest: 'to + tolerance',
};
const given: Formulas = { predicted: 'X', least: 'least', greatest: 'greatest' };
const none: Formulas = { predicted: '0', least: 'least', greatest: 'tolerance' };

const formulasOf: Readonly<Record<ReadingKind, Formulas>> = {
  'battery-rest': given,
  charging: given,
  supply: solved,
  'feed-drop': solved,
  'ground-drop': solved,
  resistance: { predicted: '(from + to) / 2', least: 'from', greatest: 'to' },
  'open-circuit': given,
  current: {
    predicted: 'X',
    least: '0.4 * X',
    greatest: 'the greater of 1.5 * X and 0.5, or the most that is allowed',
  },
  gain: { predicted: 'X', least: '(1 - u) * X', greatest: 'X' },
  delay: { predicted: 'X', least: 'X - tolerance, not below 0', greatest: 'X + tolerance' },
  noise: given,
  source: { predicted: 'X', least: '0.75 * X', greatest: '1.25 * X' },
  'contact-current': solved,
  'contact-drop': { ...solved, greatest: 'to + tolerance, or what one joint may lose' },
  'contact-open': { ...solved, least: 'what one joint may lose' },
  'charger-voltage': solved,
  'charger-current': solved,
  'no-current': none,
  'bank-charge': { ...solved, least: 'from - what may be left over the open holder' },
};

const sides = ['predicted', 'least', 'greatest'] as const;

/** The traces of what a line of the record tells: its prediction and its limits, each where it has one. */
export function readingTraces(line: Prediction): ReadonlyMap<(typeof sides)[number], Traced<number>> {
  return new Map(
    sides.flatMap((side) => {
      const value = line[side];
      if (value === null) return [];
      const rule = side === 'predicted' ? 'reading-predicted' : 'reading-limit';
      const formula = formulasOf[line.kind][side];
      const working = { rule, formula, citation: commonPractice, mark: 'cp', inputs: line.figures } as const;
      return [[side, traced(value, line.unit, working)] as const];
    }),
  );
}
