import type { PlanMeasurement } from '../../../model/plan/index.ts';
import type { DimensionName } from '../../../model/quantity/quantity.ts';
import type { Figure } from '../../../model/trace.ts';

/** What a reading is of: decides how a difference is explained. */
export type ReadingKind =
  | 'battery-rest'
  | 'charging'
  | 'supply'
  | 'feed-drop'
  | 'ground-drop'
  | 'resistance'
  | 'open-circuit'
  | 'current'
  | 'gain'
  | 'delay'
  | 'noise'
  | 'source'
  | 'contact-current'
  | 'contact-drop'
  | 'contact-open'
  | 'charger-voltage'
  | 'charger-current'
  | 'no-current'
  | 'bank-charge';

/** A line of the record before it was read. Values in the unit named. */
export interface Prediction {
  readonly id: string;
  readonly kind: ReadingKind;
  readonly what: string;
  readonly predicted: number | null;
  readonly unit: 'V' | 'mV' | 'A' | 'ohm' | 'ms' | 'Hz';
  readonly least: number | null;
  readonly greatest: number | null;
  readonly when: PlanMeasurement['when'];
  /** What the prediction and its limits follow from. */
  readonly figures: readonly Figure[];
}

/** What a reading in a unit must be a measure of, and its factor from SI. */
export const readingUnits: Readonly<
  Record<Prediction['unit'], { readonly dimension: DimensionName; readonly perSi: number }>
> = {
  V: { dimension: 'voltage', perSi: 1 },
  mV: { dimension: 'voltage', perSi: 1000 },
  A: { dimension: 'current', perSi: 1 },
  ohm: { dimension: 'resistance', perSi: 1 },
  ms: { dimension: 'time', perSi: 1000 },
  Hz: { dimension: 'frequency', perSi: 1 },
};

/** A reading beside its prediction, and how other readings of the same device came out. */
export interface Difference {
  readonly line: Prediction;
  readonly reading: number;
  /** Readings of the same record by id, as far as they were taken: what differs elsewhere may be the cause here. */
  readonly differing: ReadonlySet<string>;
  /** Most that one joint may drop, by house rule (V). */
  readonly jointV: number;
}

/** Where to look for the cause of a difference; `ratio`: the reading over its prediction, null where there is none. */
export type Explain = (difference: Difference, ratio: number | null) => string;
