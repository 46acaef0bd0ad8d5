import type { PlanFuse } from '../../model/plan/index.ts';
import { batteriesAmong, type LiveEdge, type LiveSide, liveSide, reached } from '../live-side.ts';
import { deviceOf, fuseSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { ampsDrawn, listed } from '../words.ts';
import { batteriesBare, interruptsText } from './interrupting.ts';

/** What clears a fault behind a fuse if that fuse fails to. */
interface Backup {
  /** The fuses before it that interrupt the whole fault current, nearest to it on each way. */
  readonly by: readonly PlanFuse[];
  /** The batteries that reach it past all of these. */
  readonly past: readonly string[];
}

/** Every battery that reaches a fuse must meet one that interrupts the fault current (A) on each of its ways. */
function backupOf({ job, plan }: Case, side: LiveSide, fuse: PlanFuse, faultA: number): Backup {
  const own = side.edges.find(({ kind, id }) => kind === 'fuse' && id === fuse.id);
  const strong = plan.power.fuses.filter(
    ({ id, interruptA }) => id !== fuse.id && interruptA !== null && interruptA >= faultA,
  );
  const isStrong = (edge: LiveEdge) => edge.kind === 'fuse' && strong.some(({ id }) => id === edge.id);
  const others = side.edges.filter((edge) => edge !== own);
  const near = reached(others, own?.ends ?? [], (edge) => !isStrong(edge));
  const batteries = batteriesAmong(
    job,
    side,
    reached(others, own?.ends ?? [], () => true),
  );
  const fed = reached(others, batteries, (edge) => !edge.ends.some((end) => near.has(end)));
  const entering = others.filter(
    (edge) =>
      isStrong(edge) &&
      edge.ends.some((end) => near.has(end)) &&
      edge.ends.some((end) => !near.has(end) && fed.has(end)),
  );
  return {
    by: strong.filter(({ id }) => entering.some((edge) => edge.id === id)),
    past: batteries.filter((battery) => near.has(battery)),
  };
}

/** What stands before the fuse, for a message. */
function backupText({ by, past }: Backup): string {
  const names = listed(by.map(({ id }) => id));
  if (by.length === 0) return '; no fuse before it clears that';
  const clears = by.length === 1 ? 'clears' : 'clear';
  return past.length === 0
    ? `; ${names} before it ${clears} that`
    : `; ${names} before it ${clears} that, but not what comes from ${listed(past)}`;
}

/** A fuse behind others that a short may overtax. */
interface Overtaxed {
  readonly fuse: PlanFuse;
  readonly faultA: number;
  readonly interruptA: number;
  readonly backup: Backup;
}

function overtaxedAmong(about: Case): Overtaxed[] {
  const side = liveSide(about);
  const bare = batteriesBare(about);
  return about.plan.power.fuses.flatMap((fuse): Overtaxed[] => {
    const { faultA, interruptA, needsInterruptA } = fuse;
    if (deviceOf(about.job, fuse.item)?.origin === 'vehicle') return [];
    // The first fuse behind a battery is judged by the battery itself.
    if (needsInterruptA !== null || bare(fuse).length > 0) return [];
    if (faultA === undefined || faultA === null || interruptA === null || faultA <= interruptA) return [];
    return [{ fuse, faultA, interruptA, backup: backupOf(about, side, fuse, faultA) }];
  });
}

const isBacked = ({ by, past }: Backup): boolean => by.length > 0 && past.length === 0;

/** What is told in one sentence: the fuses of one holder or block that interrupt alike behind the same fuses. */
function alike({ fuse: { item, form }, interruptA, backup: { by, past } }: Overtaxed): string {
  return JSON.stringify([item, form, interruptA, by.map(({ id }) => id), past]);
}

function verdictOf(about: Case, group: readonly Overtaxed[]): Verdict<'fuse-interrupting-downstream'>[] {
  const [worst] = group.toSorted((a, b) => b.faultA - a.faultA);
  if (!worst) return [];
  const { fuse, faultA, interruptA, backup } = worst;
  const ids = [fuse, ...group.map((one) => one.fuse).filter((one) => one !== fuse)].map(({ id }) => id);
  const backed = isBacked(backup);
  const before = backed
    ? 'or use a form with a higher interrupting rating'
    : "before one, use a form with a higher interrupting rating, or a fuse before it that clears the whole, or write the maker's figure as interrupts: in the fuse's part";
  return [
    {
      level: backed ? 'note' : 'caution',
      of: [...ids, ...backup.by.map(({ id }) => id)],
      message: `${interruptsText(fuse, ids)}; a dead short drives up to ${ampsDrawn(faultA)} through ${ids.length === 1 ? 'it' : 'them'}${backupText(backup)}`,
      value: faultA,
      limit: interruptA,
      unit: 'A',
      remedy: `after a dead short replace the fuse and look at the holder; ${before}`,
      ...fuseSpot(about.job, fuse),
    },
  ];
}

const downstream: Rule = {
  id: 'fuse-interrupting-downstream',
  judge(about) {
    const all = overtaxedAmong(about);
    const groups = [...new Set(all.map(alike))];
    return groups.flatMap((group) =>
      verdictOf(
        about,
        all.filter((one) => alike(one) === group),
      ),
    );
  },
};

export const interruptingDownstreamRules: readonly Rule[] = [downstream];
