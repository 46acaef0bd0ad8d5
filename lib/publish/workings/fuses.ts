import type { BuildPlan, PlanFuse } from '../../model/plan/index.ts';
import { type Cell, strong, type Table, tableOf } from '../sheets/table.ts';
import { spelled } from '../words.ts';
import { mayFlow, mustFlow } from '../written.ts';

/** Why each fuse has its rating. */
export function fuseReasons({ power: { fuses } }: BuildPlan): Table {
  return tableOf(
    'Why the fuses have these ratings',
    fuses,
    [
      { title: 'Fuse', cell: (fuse) => strong(fuse.id) },
      { title: 'At rated power', kind: 'figure', cell: (fuse) => mustFlow(fuse.ratedA) },
      { title: "Maker's ceiling", kind: 'figure', cell: (fuse) => mayFlow(fuse.ceilingA) },
      { title: 'Least ampacity', kind: 'figure', cell: (fuse) => mayFlow(fuse.leastAmpacityA) },
      { title: 'Interrupts', kind: 'figure', cell: (fuse) => interrupts(fuse) },
      { title: 'How', cell: (fuse) => ({ text: spelled(fuse.chosen), beside: fuse.reason }) },
    ],
    (fuse) => fuse.id,
  );
}

function interrupts({ interruptA, needsInterruptA }: PlanFuse): Cell {
  const text = mayFlow(interruptA);
  return needsInterruptA === null ? { text } : { text, beside: `needs ${mustFlow(needsInterruptA)}` };
}
