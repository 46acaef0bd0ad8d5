import type { BuildPlan, PlanFuse, PlanItem } from '../../model/plan/index.ts';
import { type FeedNode, feedForest } from '../power/feed-tree.ts';

/** A fuse of the job with the number that it has in all of a packet. */
export interface NumberedFuse {
  readonly number: number;
  readonly fuse: PlanFuse;
  /** The item that holds it. */
  readonly holder: PlanItem;
  /** What it feeds, in the order of the plan; where that draws nothing, what comes next behind it. */
  readonly feeds: readonly PlanItem[];
}

type Fed = Pick<BuildPlan, 'items' | 'wires'> & { readonly power: Pick<BuildPlan['power'], 'fuses'> };

/** The fuses that the job adds, numbered from the battery on, way by way. */
export function numberedFuses(plan: Fed): NumberedFuse[] {
  const inOrder = feedForest(plan).roots.flatMap((root) => fusesAlong(plan, root));
  const rest = plan.power.fuses.filter((fuse) => !inOrder.some((one) => one.fuse === fuse));
  const all: readonly FuseAlong[] = [...inOrder, ...rest.map((fuse) => ({ fuse, next: [] }))];
  const added = all.flatMap(({ fuse, next }) => {
    const holder = plan.items.find(({ id }) => id === fuse.item);
    return holder?.origin === 'job' || holder?.tap ? [{ fuse, holder, next }] : [];
  });
  return added.map(({ fuse, holder, next }, index) => {
    const loads = plan.items.filter(({ id }) => fuse.loads.includes(id));
    return { number: index + 1, fuse, holder, feeds: loads.length > 0 ? loads : next };
  });
}

/** A fuse on the way of the feed, and what its conductor leads to. */
interface FuseAlong {
  readonly fuse: PlanFuse;
  readonly next: readonly PlanItem[];
}

function fusesAlong(plan: Fed, { item, branches }: FeedNode): FuseAlong[] {
  const own = plan.power.fuses.filter((fuse) => fuse.item === item.id);
  const whole = own.filter(({ way }) => !item.terminals.some(({ name }) => name === way));
  return [
    ...whole.map((fuse) => ({ fuse, next: branches.map(({ to }) => to.item) })),
    ...branches.flatMap(({ fromTerminal, to }) => [
      ...own.filter((fuse) => isWay(fuse, fromTerminal)).map((fuse) => ({ fuse, next: [to.item] })),
      ...fusesAlong(plan, to),
    ]),
  ];
}

/** True for the fuse in the way of a block that leaves by a terminal. */
export function isWay({ way }: Pick<PlanFuse, 'way'>, terminal: string): boolean {
  return way !== '' && way === terminal;
}

/** Numbers as a text tells them: `3`, `3 and 4`, `3 to 6`, `1, 3 and 5`. */
export function numbersText(numbers: readonly number[]): string {
  const [first = 0] = numbers;
  const last = numbers.at(-1) ?? first;
  const isRun = numbers.every((number, index) => number === first + index);
  if (isRun && numbers.length > 2) return `${first} to ${last}`;
  return numbers.length < 2 ? `${first}` : `${numbers.slice(0, -1).join(', ')} and ${last}`;
}

/** `fuse 3`, `fuses 3 to 6`. */
export function fusesText(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'fuse' : 'fuses'} ${numbersText(numbers)}`;
}
