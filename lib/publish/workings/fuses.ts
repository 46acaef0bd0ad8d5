import type { BuildPlan, PlanFuse } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { type Cell, strong, type Table, tableOf } from '../sheets/table.ts';
import { spelled } from '../words/words.ts';
import { none } from '../words/written.ts';

/** Why each fuse has its rating. */
export function fuseReasons({ power: { fuses } }: Pick<BuildPlan, 'power'>): Table {
  return tableOf(
    'Why the fuses have these ratings',
    fuses,
    [
      { title: 'Fuse', cell: (fuse) => strong(fuse.id) },
      { title: 'At rated power', kind: 'figure', cell: (fuse) => printed('current-carried', fuse.ratedA) },
      {
        title: "Maker's ceiling",
        kind: 'figure',
        cell: (fuse) => printed('current-allowed', fuse.ceilingA),
      },
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

const bases = {
  maker: "by its maker's short-circuit current",
  stated: 'by the resistance that its part states',
  assumed: 'assumed',
} as const;

/** What a dead short behind each fuse drives through it: from which sources, by which ways, and what the fuse makes of it. */
export function shortsThroughFuses({ power: { fuses } }: Pick<BuildPlan, 'power'>): Table {
  const known = fuses.filter(
    ({ faultFrom = [], faultUnknown = [] }) => faultFrom.length + faultUnknown.length > 0,
  );
  return tableOf(
    'What a dead short drives through the fuses',
    known,
    [
      { title: 'Fuse', cell: (fuse) => strong(fuse.id) },
      { title: 'Short at', cell: ({ faultAt }) => faultAt ?? none },
      { title: 'Through it', kind: 'figure', cell: throughIt },
      { title: 'From', kind: 'words', cell: fromCell },
      { title: 'By way of', kind: 'words', cell: waysCell },
      { title: 'It interrupts', kind: 'figure', cell: interruptedCell },
    ],
    (fuse) => fuse.id,
  );
}

function throughIt({ faultA, faultUnknown = [] }: PlanFuse): Cell {
  if (faultA === null || faultA === undefined) return { text: 'not known' };
  return faultUnknown.length > 0
    ? { text: printed('current-carried', faultA), beside: 'at least' }
    : { text: printed('current-carried', faultA) };
}

function fromCell({ faultFrom = [], faultUnknown = [] }: PlanFuse): string {
  const known = faultFrom.map(
    ({ source, currentA, basis }) => `${source} ${printed('current-carried', currentA)}, ${bases[basis]}`,
  );
  const unknown = faultUnknown.map((source) => `${source}: nobody states what it gives`);
  return [...known, ...unknown].join('; ');
}

function waysCell({ faultWays = [] }: PlanFuse): string {
  return faultWays.map(({ of, currentA }) => `${of} ${printed('current-carried', currentA)}`).join('; ');
}

function interruptedCell({ interruptA, interruptBasis }: PlanFuse): Cell {
  const by = interruptBasis === 'maker' ? 'by its maker' : 'as others of its form, its maker is silent';
  return { text: printed('current-allowed', interruptA), beside: by };
}
