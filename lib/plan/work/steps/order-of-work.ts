import type { BuildPlan, PlanSchedule, PlanStep } from '../../../model/plan/index.ts';
import { workMinutes, workTimeDefinitions, workTimeNames } from '../../../model/work-times.ts';
import type { Step, Wait, Work } from '../work.ts';
import type { WaitingRing } from './item-phases.ts';
import { criticalPath, inOrder, ringOf, twoPersonStarts, type Waiting } from './sort-steps.ts';
import { vehicleWork } from './steps-in-vehicle.ts';
import { boardWork } from './steps-on-board.ts';

/** The order of work, how long it takes, and what in it waits for each other. */
export interface OrderOfWork extends Pick<BuildPlan, 'steps' | 'schedule'> {
  readonly rings: readonly WaitingRing[];
}

/**
 * The order of work as a partial order: each step with what it waits for and why, what it installs, which acts are
 * done in it, and how it is known to be right. Every item and wire of the job is installed by one step; each act that
 * its kind asks for (set, label, test, connect, fit a fuse, measure) is done once, then or later.
 */
export function orderOfWork(work: Work): OrderOfWork {
  const boards = work.plan.boards.map((board) => boardWork(work, board));
  const all = [...boards.flatMap(({ steps }) => steps), ...vehicleWork(work, boards)];
  const raised = boards.flatMap(({ phases }) => phases.rings);
  const told = new Set(raised.flatMap(({ items }) => items));
  const declared = work.declared.filter(({ item }) => !told.has(item));
  const { kept, rings: mutual } = withoutRings(declared);
  const { steps, rings } = withDeclared(all, { ...work, declared: kept });
  const { ordered } = inOrder(steps.map(waiting));
  const timing = criticalPath(ordered);
  const two = twoPersonStarts(ordered, timing);
  return {
    rings: [...raised, ...mutual, ...rings],
    steps: asBegun(ordered, two.starts).map((step): PlanStep => {
      const slack = timing.minutes - (timing.earliest.get(step.id) ?? 0) - (timing.tail.get(step.id) ?? 0);
      return { ...step, startMinute: two.starts.get(step.id) ?? 0, critical: slack < 1e-9 };
    }),
    schedule: {
      totalMinutes: ordered.reduce((sum, { minutes }) => sum + minutes, 0),
      twoPersonMinutes: two.minutes,
      criticalMinutes: timing.minutes,
      criticalPath: [...timing.path],
      times: timesOf(work),
    },
  };
}

/**
 * The steps as two people begin them: what is done at the board, then what is done in the vehicle in the order of its clock,
 * so that the numbers of each column follow each other; none before what it waits for.
 */
function asBegun<T extends Waiting>(steps: readonly T[], starts: ReadonlyMap<string, number>): readonly T[] {
  const startOf = ({ id }: Waiting) => starts.get(id) ?? 0;
  const byClock = (own: readonly T[]) => own.toSorted((a, b) => startOf(a) - startOf(b));
  const columns = [
    byClock(steps.filter(({ by }) => by === 'board')),
    byClock(steps.filter(({ by }) => by !== 'board')),
  ];
  const known = new Set(steps.map(({ id }) => id));
  const begun: T[] = [];
  const isReady = (step: T | undefined): boolean =>
    step?.after.every((id) => !known.has(id) || begun.some((one) => one.id === id)) ?? false;
  for (;;) {
    const next = columns.find(([first]) => isReady(first))?.shift();
    if (!next) return begun.length === steps.length ? begun : steps;
    begun.push(next);
  }
}

function waiting(step: Step): Step & Waiting & Pick<PlanStep, 'after'> {
  return { ...step, after: [...new Set(step.waitsFor.map((wait) => wait.step))] };
}

function timesOf({ times }: Work): PlanSchedule['times'] {
  return workTimeNames.map((name) => {
    const { minutes, given } = workMinutes(times, name);
    const { says } = workTimeDefinitions[name];
    return { name, says, minutes, given, ...(given ? {} : { mark: 'cp' as const }) };
  });
}

/** What the job declares without what goes round in a ring: parts of one place are mounted in one step, so no step tells. */
function withoutRings(declared: readonly Wait[]): {
  readonly kept: readonly Wait[];
  readonly rings: readonly WaitingRing[];
} {
  const rings: WaitingRing[] = [];
  let kept = declared;
  for (;;) {
    const ring = ringOf(
      new Map(
        kept.map(({ item }) => [item, kept.filter((wait) => wait.item === item).map(({ after }) => after)]),
      ),
    );
    if (!ring) return { kept, rings };
    const [first = '', second = first] = ring;
    const reasons = ring.map((item, index) => {
      const next = ring[(index + 1) % ring.length] ?? item;
      const wait = kept.find((one) => one.item === item && one.after === next);
      return `${item} is to come after ${next} (${wait?.why ?? 'as written'})`;
    });
    rings.push({
      items: ring,
      message: `${ring.join(' and ')} wait for each other: ${reasons.join('; ')}`,
      remedy: `take ${second} out of after: of ${first}`,
    });
    kept = kept.filter(({ item, after }) => item !== first || after !== second);
  }
}

/** Adds what the job declares between steps. What would make steps wait for each other is told and left out. */
function withDeclared(
  all: readonly Step[],
  { declared, plan }: Work,
): { readonly steps: readonly Step[]; readonly rings: readonly WaitingRing[] } {
  const rings: WaitingRing[] = [];
  let steps = all;
  for (const { item, after, why } of declared) {
    const names = new Set([
      after,
      ...plan.wires.filter(({ id, link }) => link === after || id === after).map(({ id }) => id),
    ]);
    const own = steps.find(({ installs }) => installs.includes(item));
    const before = steps.filter(({ installs, id }) => id !== own?.id && installs.some((id) => names.has(id)));
    if (!own || before.length === 0) continue;
    const missing = before.filter(({ id }) => !own.waitsFor.some((wait) => wait.step === id));
    const added = missing.map(({ id }) => ({ step: id, why: `${item} after ${after}: ${why}` }));
    const tried = steps.map((step) =>
      step.id === own.id ? { ...step, waitsFor: [...step.waitsFor, ...added] } : step,
    );
    const ring = ringOf(new Map(tried.map(({ id, waitsFor }) => [id, waitsFor.map((wait) => wait.step)])));
    if (ring) rings.push(declaredRing({ item, after, why }, ring));
    else steps = tried;
  }
  return { steps, rings };
}

function declaredRing({ item, after, why }: Wait, ring: readonly string[]): WaitingRing {
  return {
    items: [item, after],
    message: `${item} and ${after} wait for each other: ${item} is to come after ${after} (${why}), but the steps ${ring.join(', ')} go round in a ring`,
    remedy: `take ${after} out of after: of ${item}, or mount ${item} off the board so that it can come later`,
  };
}
