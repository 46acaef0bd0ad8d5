import { ratedPointName } from '../../model/operating-points.ts';
import type { OperatingPoint, PlanConductor } from '../../model/plan/index.ts';
import { jobWires, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn } from '../words.ts';

/** Points that last too short to warm a conductor through: nobody plays at rated power for minutes. */
const brief: ReadonlySet<string> = new Set(['full-rating', 'rated-power']);

interface Carried {
  readonly title: string;
  readonly currentA: number;
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

function overloaded(about: Case, conductor: PlanConductor): Verdict<'vehicle-conductor-overloaded'>[] {
  const { points } = about.plan.power;
  const { id, size, ampacityA, cautionA } = conductor;
  const most = greatest(conductor, points);
  const lasting = greatest(
    conductor,
    points.filter(({ name }) => !brief.has(name)),
  );
  const over = most !== undefined && most.currentA > ampacityA + 1e-9;
  const warm = lasting !== undefined && lasting.currentA > (cautionA ?? ampacityA) + 1e-9;
  const told = over ? most : lasting;
  if (!told || !(over || warm)) return whilePlaying(about, conductor);
  const limit = over ? ampacityA : (cautionA ?? ampacityA);
  return [
    {
      level: over ? 'stop' : 'caution',
      of: [id],
      message: `${told.title}: ${ampsDrawn(told.currentA)} flow through ${id}, which the vehicle came with and no fuse protects; ${size.label} carries ${amps(limit)} ${over ? 'by the published figure' : 'at the true ambient of its zone'}`,
      value: told.currentA,
      limit,
      unit: 'A',
      remedy: 'run a fused lead beside it that carries the rest, or play with less power',
      ...wireSpot(about, id),
    },
  ];
}

/**
 * Rated power lasts for seconds in music, and a heavy conductor takes minutes to warm through: what passes the true
 * ambient there alone is told, since a tone or a test at full power would last, and no fuse would end it.
 */
function whilePlaying(about: Case, conductor: PlanConductor): Verdict<'vehicle-conductor-overloaded'>[] {
  const { id, size, ampacityA, cautionA } = conductor;
  const { points } = about.plan.power;
  const rated = greatest(
    conductor,
    points.filter(({ name }) => name === ratedPointName),
  );
  const limit = cautionA ?? ampacityA;
  if (!rated || rated.currentA <= limit + 1e-9) return [];
  const music = greatest(
    conductor,
    points.filter(({ name }) => name === 'music' || name === 'cruise'),
  );
  const meanwhile = music ? `; with music it is ${ampsDrawn(music.currentA)}` : '';
  return [
    {
      level: 'note',
      of: [id],
      message: `${rated.title}: ${ampsDrawn(rated.currentA)} flow through ${id}, which the vehicle came with and no fuse protects; ${size.label} carries ${amps(limit)} for long at the true ambient of its zone${meanwhile}`,
      value: rated.currentA,
      limit,
      unit: 'A',
      remedy:
        'play no steady tone at full power for more than a minute, and none for a test or a show; where that is wanted run a fused lead beside it',
      ...wireSpot(about, id),
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
    return about.plan.power.conductors
      .filter(({ id, fuses }) => !own.has(id) && fuses.length === 0)
      .flatMap((conductor) => overloaded(about, conductor));
  },
};

export const vehicleConductorRules: readonly Rule[] = [vehicleConductors];
