import type { BuildPlan, FuseAlternative, PlanFuse } from '../../model/plan/index.ts';
import { type Cell, strong, type Table, tableOf } from '../sheets/table.ts';
import { joined, spelled } from '../words.ts';
import { measure, measureOr } from '../written.ts';

/** Why each fuse has its rating. */
export function fuseReasons({ power: { fuses } }: BuildPlan): Table {
  return tableOf(
    'Why the fuses have these ratings',
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

/** What else would do in place of each fuse, and what it asks for. */
export function fuseAlternatives({ power: { fuses } }: BuildPlan): Table {
  const all: Alternative[] = fuses.flatMap((fuse) =>
    fuse.alternatives.map((one) => ({ ...one, fuse: fuse.id })),
  );
  return tableOf(
    'Fuses that would do instead',
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
