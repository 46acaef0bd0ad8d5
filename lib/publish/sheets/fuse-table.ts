import type { BuildPlan, FuseAlternative, PlanFuse } from '../../model/plan/index.ts';
import { joined, spelled } from '../words.ts';
import { lengthOr, measure, measureOr, none, type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { type Cell, strong, type Table, tableOf, tick } from './table.ts';

/** Every fuse: where it is, what it protects, and what else would do. */
export interface FuseTableSheet {
  readonly fuses: Table;
  readonly reasons: Table;
  readonly alternatives: Table | null;
}

function fusesTable(fuses: readonly PlanFuse[], write: Writer, wireLabel: (id: string) => string): Table {
  return tableOf(
    'Fuses',
    fuses,
    [
      { title: 'Fuse', cell: (fuse) => strong(fuse.way === '' ? fuse.item : `${fuse.item}, ${fuse.way}`) },
      {
        title: 'Rating',
        kind: 'figure',
        cell: (fuse) => strong(fuse.ratingA === null ? 'none chosen' : measure(fuse.ratingA, 'A', 0)),
      },
      {
        title: 'Form',
        cell: (fuse) => ({ text: spelled(fuse.form), beside: fuse.part ?? 'not in the catalogue' }),
      },
      { title: 'From its source', kind: 'figure', cell: (fuse) => lengthOr(fuse.distanceM, write.length) },
      {
        title: 'Protects',
        cell: (fuse) => (fuse.protects.length === 0 ? none : fuse.protects.map(wireLabel).join(', ')),
      },
      { title: 'In stock', kind: 'figure', cell: (fuse) => String(fuse.stockQuantity) },
      tick('Fitted'),
    ],
    (fuse) => fuse.id,
  );
}

function reasonsTable(fuses: readonly PlanFuse[]): Table {
  return tableOf(
    'Why these ratings',
    fuses,
    [
      { title: 'Fuse', cell: (fuse) => strong(fuse.id) },
      { title: 'At rated power', kind: 'figure', cell: (fuse) => measure(fuse.ratedA, 'A', 1) },
      { title: "Maker's ceiling", kind: 'figure', cell: (fuse) => measureOr(fuse.ceilingA, 'A', 0) },
      { title: 'Least ampacity', kind: 'figure', cell: (fuse) => measureOr(fuse.leastAmpacityA, 'A', 1) },
      { title: 'Interrupts', kind: 'figure', cell: (fuse) => interrupts(fuse) },
      { title: 'How', cell: (fuse) => ({ text: spelled(fuse.chosen), beside: fuse.reason }) },
    ],
    (fuse) => fuse.id,
  );
}

function interrupts({ interruptA, needsInterruptA }: PlanFuse): Cell {
  const text = measureOr(interruptA, 'A', 0);
  return needsInterruptA === null ? { text } : { text, beside: `needs ${measure(needsInterruptA, 'A', 0)}` };
}

interface Alternative extends FuseAlternative {
  readonly fuse: string;
}

function alternativesTable(fuses: readonly PlanFuse[]): Table | null {
  const all: Alternative[] = fuses.flatMap((fuse) =>
    fuse.alternatives.map((one) => ({ ...one, fuse: fuse.id })),
  );
  if (all.length === 0) return null;
  return tableOf(
    'What else would do',
    all,
    [
      { title: 'In place of', cell: (one) => strong(one.fuse) },
      { title: 'Rating', kind: 'figure', cell: (one) => measure(one.ratingA, 'A', 0) },
      { title: 'Form', cell: (one) => spelled(one.form) },
      { title: 'Asks for', cell: (one) => (one.parts.length === 0 ? 'nothing else' : joined(one.parts)) },
      { title: 'In stock', kind: 'figure', cell: (one) => String(one.stockQuantity) },
      { title: 'Note', cell: (one) => one.note },
    ],
    (one) => one.fuse,
  );
}

function fuseModel(plan: BuildPlan): FuseTableSheet | null {
  const { fuses } = plan.power;
  if (fuses.length === 0) return null;
  const labels = new Map(plan.wires.map((wire) => [wire.id, wire.label]));
  return {
    fuses: fusesTable(fuses, writerFor(plan.shop), (id) => labels.get(id) ?? id),
    reasons: reasonsTable(fuses),
    alternatives: alternativesTable(fuses),
  };
}

export const fuseTable = builderSheet('fuse-table', 'Fuse table', fuseModel, { cautions: ['battery'] });
