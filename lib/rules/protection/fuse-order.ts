import type { PlanFuse } from '../../model/plan/index.ts';
import { type LiveSide, liveSide, noFuse, reached } from '../live-side.ts';
import { fuseSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, listed } from '../words.ts';
import { distributionOverCurrent } from './distribution-current.ts';
import { fusesAt } from './fuses-side-by-side.ts';

/** A fuse with the fuses that stand next behind it. */
interface Feeder {
  readonly fuse: PlanFuse;
  readonly ratingA: number;
  readonly behind: readonly PlanFuse[];
}

/** Fuses of a job with those next behind them, seen from the source; a fuse fed from both sides has none behind it. */
function feeders({ plan }: Case, side: LiveSide): readonly Feeder[] {
  const { fuses } = plan.power;
  return fuses.flatMap((fuse): Feeder[] => {
    const edge = side.edges.find(({ kind, id }) => kind === 'fuse' && id === fuse.id);
    if (fuse.ratingA === null || !edge) return [];
    const fed = reached(side.edges, side.sources, (other) => other !== edge);
    const far = edge.ends.filter((end) => !fed.has(end));
    if (far.length !== 1) return [];
    const beyond = reached(side.edges, far, noFuse);
    const behind = fuses.filter(({ id }) => {
      const other = side.edges.find((one) => one.kind === 'fuse' && one.id === id);
      return other !== undefined && other !== edge && other.ends.some((end) => beyond.has(end));
    });
    return [{ fuse, ratingA: fuse.ratingA, behind }];
  });
}

const fuseOrder: Rule = {
  id: 'fuse-order',
  judge(about) {
    const side = liveSide(about);
    const inARow = feeders(about, side).flatMap(({ fuse, ratingA, behind }) =>
      behind.flatMap((other): Verdict<'fuse-order'>[] => {
        if (other.ratingA === null || other.ratingA <= ratingA) return [];
        return [
          {
            level: 'caution',
            of: [other.id, fuse.id],
            message: `the fuse ${other.id} is ${amps(other.ratingA)}, above the ${amps(ratingA)} of ${fuse.id} that feeds it: a fault behind it opens ${fuse.id} and everything goes dead`,
            value: other.ratingA,
            limit: ratingA,
            unit: 'A',
            remedy: `lower ${other.id}, or raise ${fuse.id} with its conductors`,
            ...fuseSpot(about.job, other),
          },
        ];
      }),
    );
    return [...inARow, ...about.plan.power.fuses.flatMap((fuse) => underSeveral(about, side, fuse))];
  },
};

/**
 * What feeds a fuse where no single fuse stands before it: several from one side, or some from either side. None where
 * a source reaches it bare, since then nothing before it can open first.
 */
function severalBefore(about: Case, side: LiveSide, { id }: PlanFuse): readonly PlanFuse[] {
  const edge = side.edges.find((one) => one.kind === 'fuse' && one.id === id);
  if (!edge) return [];
  const fed = reached(side.edges, side.sources, (other) => other !== edge);
  const before = edge.ends
    .filter((end) => fed.has(end))
    .map((end) => fusesAt(about, side, end).filter((other) => other.id !== id));
  if (before.some((fuses) => fuses.length === 0)) return [];
  const all = [...new Set(before.flat())];
  return all.length > 1 ? all : [];
}

/** A fuse above the least of several that feed it: which of them opens first hangs on how the current divides. */
function underSeveral(about: Case, side: LiveSide, fuse: PlanFuse): Verdict<'fuse-order'>[] {
  const { id, ratingA } = fuse;
  const before = severalBefore(about, side, fuse);
  const [least] = before.toSorted((a, b) => (a.ratingA ?? 0) - (b.ratingA ?? 0));
  if (ratingA === null || !least || least.ratingA === null || ratingA <= least.ratingA) return [];
  const sumA = before.reduce((sum, other) => sum + (other.ratingA ?? 0), 0);
  const over = ratingA > sumA;
  const names = listed(before.map((other) => other.id));
  return [
    {
      level: over ? 'caution' : 'note',
      of: [id, ...before.map((other) => other.id)],
      message: over
        ? `the fuse ${id} is ${amps(ratingA)}, above the ${amps(sumA)} of ${names} together that feed it: a fault behind it opens them and everything goes dead`
        : `the fuse ${id} is ${amps(ratingA)}, above the ${amps(least.ratingA)} of ${least.id}, and is fed by ${names}: which of them a fault behind it opens first hangs on how the current divides`,
      value: ratingA,
      limit: over ? sumA : least.ratingA,
      unit: 'A',
      remedy: `lower ${id}, or raise what feeds it with its conductors`,
      ...fuseSpot(about.job, fuse),
    },
  ];
}

const fusesOverFeeder: Rule = {
  id: 'fuses-over-feeder',
  judge(about) {
    return feeders(about, liveSide(about)).flatMap(
      ({ fuse, ratingA, behind }): Verdict<'fuses-over-feeder'>[] => {
        const sumA = behind.reduce((sum, other) => sum + (other.ratingA ?? 0), 0);
        if (behind.length < 2 || sumA <= ratingA) return [];
        return [
          {
            level: 'note',
            of: [fuse.id, ...behind.map(({ id }) => id)],
            message: `the fuses ${listed(behind.map(({ id }) => id))} add to ${amps(sumA)}, above the ${amps(ratingA)} of ${fuse.id} that feeds them: with all at their limit it opens first`,
            value: sumA,
            limit: ratingA,
            unit: 'A',
            remedy: 'run a larger feeder with a larger main fuse, or keep the smaller main fuse knowingly',
            ...fuseSpot(about.job, fuse),
          },
        ];
      },
    );
  },
};

export const fuseOrderRules: readonly Rule[] = [fuseOrder, fusesOverFeeder, distributionOverCurrent];
