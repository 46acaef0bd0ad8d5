import type { BuiltJob } from '../../model/content/built.ts';
import type { BuildPlan } from '../../model/plan/index.ts';

/** What of a plan tells what is built. */
type BuiltPlan = Pick<BuildPlan, 'items' | 'boards' | 'wires' | 'runs' | 'proposals'> & {
  readonly job: Pick<BuildPlan['job'], 'revision'>;
};

/** A released plan as far as the next revision is built on it. */
export function builtJob(plan: BuiltPlan): BuiltJob {
  const routes = new Map(plan.runs.map(({ id, route }) => [id, route]));
  return {
    revision: plan.job.revision,
    items: Object.fromEntries(
      plan.items
        .filter(({ origin }) => origin === 'job')
        .map(({ id, part, board, seat }) => [id, { part, board, seat }]),
    ),
    places: Object.fromEntries(
      plan.boards.flatMap(({ id: board, placements }) =>
        placements.map(({ item, xM, yM, turnDeg, raisedM }) => [item, { board, xM, yM, turnDeg, raisedM }]),
      ),
    ),
    boards: Object.fromEntries(
      plan.boards.map(({ id, space, sheet, outline, datumInSpace: { xM, yM } }) => [
        id,
        { space, sheet, xM, yM, outline },
      ]),
    ),
    wires: Object.fromEntries(
      plan.wires
        .filter(({ origin }) => origin === 'job')
        .map(({ id, label, from, to, part, lengthM, run }) => [
          id,
          { label, from, to, part, lengthM, route: (run === null ? null : routes.get(run)) ?? null },
        ]),
    ),
    proposals: (plan.proposals ?? []).map(({ id: _, says, ...proposal }) => {
      return { ...proposal, value: JSON.parse(says) };
    }),
  };
}
