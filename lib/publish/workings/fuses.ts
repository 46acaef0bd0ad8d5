import type { BuildPlan, PlanFuse } from '../../model/plan/index.ts';
import { type Cell, strong, type Table, tableOf } from '../sheets/table.ts';
import { spelled } from '../words.ts';
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
