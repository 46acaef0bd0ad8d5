import type { Level } from '../../model/finding.ts';
import { findingFigure } from '../../model/finding-text.ts';
import { ratedPointName } from '../../model/operating-points.ts';
import type { OperatingPoint, PlanConductor } from '../../model/plan/index.ts';
import { jobWires, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed } from '../words.ts';

/** Points that last too short to warm a conductor through: nobody plays at rated power for minutes. */
const brief: ReadonlySet<string> = new Set(['full-rating', 'rated-power']);

interface Carried {
  readonly title: string;
  readonly currentA: number;
}

/** A conductor past a limit, with what it carries. */
interface Overloaded {
  readonly conductor: PlanConductor;
  readonly level: Level;
  readonly told: Carried;
  readonly limitA: number;
  readonly musicA: number | null;
}

/** The greatest current through a conductor at these points, A. */
function greatest({ id }: PlanConductor, points: readonly OperatingPoint[]): Carried | undefined {
  return points
    .flatMap(({ title, elements }) =>
      elements
        .filter(({ kind, of }) => kind === 'conductor' && of === id)
        .map(({ currentA = 0 }) => ({ title, currentA: Math.abs(currentA) })),
    )
    .toSorted((a, b) => b.currentA - a.currentA)[0];
}

/**
 * What passes the published figure at any point stops, what passes the true ambient for long cautions. Rated power lasts
 * for seconds in music, and a heavy conductor takes minutes to warm through: what passes the true ambient there alone is
 * noted, since a tone or a test at full power would last, and no fuse would end it.
 */
function overloaded({ plan }: Case, conductor: PlanConductor): Overloaded[] {
  const { points } = plan.power;
  const at = (...names: readonly string[]) =>
    greatest(
      conductor,
      points.filter(({ name }) => names.includes(name)),
    );
  const { ampacityA, cautionA } = conductor;
  const musicA = at('music', 'cruise')?.currentA ?? null;
  const past = (level: Level, told: Carried | undefined, limitA: number): Overloaded[] =>
    told && told.currentA > limitA + 1e-9 ? [{ conductor, level, told, limitA, musicA }] : [];
  const lasting = points.filter(({ name }) => !brief.has(name));
  const found = [
    ...past('stop', greatest(conductor, points), ampacityA),
    ...past('caution', greatest(conductor, lasting), cautionA),
    ...past('note', at(ratedPointName), cautionA),
  ];
  return found.slice(0, 1);
}

/** What is told in one sentence: the conductors of one circuit, which carry one current against one limit. */
const alike = ({ conductor: { size }, level, told, limitA }: Overloaded): string =>
  JSON.stringify([level, told.title, told.currentA.toPrecision(6), size.label, limitA]);

/** A lead beside each: with a fuse, but beside a ground without one, since a fuse in a ground is a fault of its own. */
function leadsBeside(conductors: readonly PlanConductor[]): string {
  const names = (some: readonly PlanConductor[]) => listed(some.map(({ id }) => id));
  const grounds = conductors.filter(({ role }) => role === 'ground');
  const lives = conductors.filter(({ role }) => role !== 'ground');
  return listed([
    ...(lives.length > 0 ? [`a fused lead beside ${names(lives)}`] : []),
    ...(grounds.length > 0 ? [`a ground lead without a fuse beside ${names(grounds)}`] : []),
  ]);
}

const whys = {
  stop: 'by the published figure',
  caution: 'at the true ambient of its zone',
  note: 'for long at the true ambient of its zone; rated power lasts only seconds in music',
} as const;

function verdictOf(about: Case, group: readonly Overloaded[]): Verdict<'vehicle-conductor-overloaded'>[] {
  const [first] = group;
  if (!first) return [];
  const { level, told, limitA, musicA, conductor } = first;
  const conductors = group.map((one) => one.conductor);
  const ids = conductors.map(({ id }) => id);
  const flows = findingFigure(told.currentA, 'A', limitA);
  const meanwhile = level === 'note' && musicA !== null ? `, and with music it is ${ampsDrawn(musicA)}` : '';
  const beside = leadsBeside(conductors);
  return [
    {
      level,
      of: ids,
      message: `${told.title}: ${flows} flow through ${listed(ids)}, which the vehicle came with and no fuse protects; ${conductor.size.label} carries ${amps(limitA)} ${whys[level]}${meanwhile}`,
      value: told.currentA,
      limit: limitA,
      unit: 'A',
      remedy:
        level === 'note'
          ? `play no steady tone at full power for more than a minute, and none for a test or a show; where that is wanted run ${beside}`
          : `run ${beside}, to carry the rest, or play with less power`,
      ...wireSpot(about, ids[0] ?? ''),
    },
  ];
}

/**
 * What the job makes the vehicle's own unfused conductors carry: charge lead, battery strap and case of the alternator
 * were made for the vehicle's loads, not for these.
 */
const vehicleConductors: Rule = {
  id: 'vehicle-conductor-overloaded',
  judge(about) {
    const own = new Set(jobWires(about).map(({ id }) => id));
    const all = about.plan.power.conductors
      .filter(({ id, fuses }) => !own.has(id) && fuses.length === 0)
      .flatMap((conductor) => overloaded(about, conductor));
    const groups = [...new Set(all.map(alike))];
    return groups.flatMap((group) =>
      verdictOf(
        about,
        all.filter((one) => alike(one) === group),
      ),
    );
  },
};

export const vehicleConductorRules: readonly Rule[] = [vehicleConductors];
