import type { PlanFuse } from '../model/plan/index.ts';
import { type LiveSide, liveSide, noFuse, reached } from './live-side.ts';
import { deviceSpot, fuseSpot } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { commonPractice, partData } from './source.ts';
import { amps, figure, listed } from './words.ts';

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
  asks: 'A fuse is not above the fuse that feeds it.',
  levels: ['caution'],
  ...commonPractice,
  judge(about) {
    return feeders(about, liveSide(about)).flatMap(({ fuse, ratingA, behind }) =>
      behind.flatMap((other): Verdict[] => {
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
            ...commonPractice,
            ...fuseSpot(about.job, other),
          },
        ];
      }),
    );
  },
};

const fusesOverFeeder: Rule = {
  id: 'fuses-over-feeder',
  asks: 'Where the fuses of the devices add to more than the fuse of their feeder, that is told, with the ways out.',
  levels: ['note'],
  ...commonPractice,
  judge(about) {
    return feeders(about, liveSide(about)).flatMap(({ fuse, ratingA, behind }): Verdict[] => {
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
          ...commonPractice,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

/** Fuses that stand before a distribution part: what they let through, its bar must carry. */
const blockOverCurrent: Rule = {
  id: 'distribution-over-current',
  asks: 'A distribution part carries what flows into it, and the fuse before it protects it.',
  levels: ['stop', 'caution'],
  ...partData,
  judge(about) {
    const all = feeders(about, liveSide(about));
    return about.job.devices.flatMap(({ id, spec, origin }): Verdict[] => {
      if (spec?.kind !== 'distribution' || origin !== 'job') return [];
      const feeder = all.find(({ behind }) => behind.some(({ item }) => item === id));
      const ratedA = about.plan.power.fuses
        .filter(({ item }) => item === id)
        .reduce((sum, fuse) => sum + fuse.ratedA, 0);
      const limit = spec.current;
      const over = ratedA > limit + 1e-9;
      if (!over && (!feeder || feeder.ratingA <= limit)) return [];
      const value = over ? ratedA : (feeder?.ratingA ?? ratedA);
      return [
        {
          level: over ? 'stop' : 'caution',
          of: [id, ...(feeder ? [feeder.fuse.id] : [])],
          message: over
            ? `${amps(ratedA)} flow through ${id} at rated power, and it is made for ${amps(limit)}`
            : `${id} is made for ${amps(limit)}, and the fuse ${feeder?.fuse.id ?? ''} before it lets ${figure(value)} A through`,
          value,
          limit,
          unit: 'A',
          remedy: over
            ? 'take a larger distribution part, or feed part of the load another way'
            : 'take a larger distribution part, or a smaller fuse before it',
          ...partData,
          ...deviceSpot(about.job, id),
        },
      ];
    });
  },
};

export const fuseOrderRules: readonly Rule[] = [fuseOrder, fusesOverFeeder, blockOverCurrent];
