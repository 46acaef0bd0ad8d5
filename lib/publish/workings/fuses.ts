import type { BuildPlan, PlanFuse } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { type Cell, strong, type Table, tableOf } from '../sheets/table.ts';
import { spelled } from '../words.ts';

/** Why each fuse has its rating. */
export function fuseReasons({ power: { fuses } }: BuildPlan): Table {
  return tableOf(
    'Why the fuses have these ratings',
    fuses,
    [
      { title: 'Fuse', cell: (fuse) => strong(fuse.id) },
      { title: 'At rated power', kind: 'figure', cell: (fuse) => printed('current-carried', fuse.ratedA) },
      { title: "Maker's ceiling", kind: 'figure', cell: (fuse) => printed('current-allowed', fuse.ceilingA) },
      {
        title: 'Least ampacity',
        kind: 'figure',
        cell: (fuse) => printed('current-allowed', fuse.leastAmpacityA),
      },
      { title: 'Interrupts', kind: 'figure', cell: (fuse) => interrupts(fuse) },
      { title: 'How', cell: (fuse) => ({ text: spelled(fuse.chosen), beside: fuse.reason }) },
    ],
    (fuse) => fuse.id,
  );
}

function interrupts({ interruptA, needsInterruptA }: PlanFuse): Cell {
  const text = printed('current-allowed', interruptA);
  return needsInterruptA === null
    ? { text }
    : { text, beside: `needs ${printed('current-carried', needsInterruptA)}` };
}
