import type { BuildPlan } from '../../model/plan/index.ts';
import { builderSheet } from './sheet.ts';

/** A label for each end of each wire, to be cut out or copied. */
export interface LabelsSheet {
  readonly labels: readonly WireLabel[];
}

interface WireLabel {
  readonly wire: string;
  readonly label: string;
  readonly end: 'A' | 'B';
  /** The terminal that this end is for, and the one at the other end. */
  readonly here: string;
  readonly there: string;
}

function labelsModel(plan: BuildPlan): LabelsSheet | null {
  const labels = plan.wires
    .filter(({ origin, label }) => origin === 'job' && label !== '')
    .flatMap(({ id, label, from, to }): WireLabel[] => [
      { wire: id, label, end: 'A', here: from, there: to },
      { wire: id, label, end: 'B', here: to, there: from },
    ]);
  return labels.length === 0 ? null : { labels };
}

export const labels = builderSheet('labels', 'Wire labels', labelsModel);
