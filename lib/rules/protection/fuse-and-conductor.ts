import type { Job } from '../../model/content/resolved-job.ts';
import type { ActingLevel } from '../../model/finding.ts';
import type { ConductorLimit, PlanConductor, PlanFuse } from '../../model/plan/index.ts';
import { linkEntry } from '../../model/ports/pair-name.ts';
import type { Mark } from '../../model/trace.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceIdOf, fuseSpot, jobWires, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, celsiusAllowed, counted, figure } from '../words.ts';

interface Pair {
  readonly fuse: PlanFuse;
  readonly ratingA: number;
  readonly conductor: PlanConductor;
}

/**
 * Every fuse with the conductors that it is the nearest to protect. A conductor that no fuse claims is held against
 * the least of the fuses that it names, since those stand in series.
 */
function protectedPairs({ plan: { power } }: Case): readonly Pair[] {
  const pair = (fuse: PlanFuse | undefined, conductor: PlanConductor): Pair[] =>
    fuse && fuse.ratingA !== null ? [{ fuse, ratingA: fuse.ratingA, conductor }] : [];
  return power.conductors.flatMap((conductor) => {
    const { id, fuses } = conductor;
    const claiming = power.fuses.filter(({ protects }) => protects.includes(id));
    if (claiming.length > 0) return claiming.flatMap((fuse) => pair(fuse, conductor));
    const named = power.fuses.filter((fuse) => fuses.includes(fuse.id) && fuse.ratingA !== null);
    const [least] = named.toSorted((a, b) => (a.ratingA ?? 0) - (b.ratingA ?? 0));
    return pair(least, conductor);
  });
}

/** What one is made of where that lowers what it carries: its size alone does not tell why. */
function sizeText(job: Job, conductor: PlanConductor): string {
  const { size, material, insulationC } = conductor;
  const clad = material === 'copper-clad-aluminium' ? ', copper-clad aluminium' : '';
  const cool = isCool(job, conductor) ? `, insulation for ${celsiusAllowed(insulationC)}` : '';
  return `${size.label}${clad}${cool}`;
}

/** What would carry more in the same size. */
function insteadText(job: Job, conductor: PlanConductor): string {
  const copper = conductor.material === 'copper-clad-aluminium' ? ', or one of copper' : '';
  const warm = isCool(job, conductor) ? ', or one with insulation for a higher temperature' : '';
  return `${copper}${warm}`;
}

/** True for insulation that stands less than that of the vehicle's own conductors. */
function isCool(job: Job, { insulationC }: PlanConductor): boolean {
  return insulationC < houseRule(job, 'insulation-fitted').value;
}

/** Where along its run a conductor carries least. */
function narrowest({ limits }: PlanConductor, level: ActingLevel): ConductorLimit | undefined {
  return limits
    .filter((limit) => limit.unit === 'A' && limit.level === level && limit.zone !== undefined)
    .toSorted((a, b) => a.limit - b.limit)[0];
}

function narrowestZone(conductor: PlanConductor, level: ActingLevel): string {
  const zone = narrowest(conductor, level)?.zone;
  return zone === undefined ? '' : ` in its zone ${zone}`;
}

/** The mark of the factors that lowered a figure of the table, where one of them is no published one. */
function factorMark(conductors: readonly PlanConductor[]): { readonly mark?: Mark } {
  const marks = conductors.map((conductor) => narrowest(conductor, 'stop')?.mark);
  const mark = marks.includes('mem') ? 'mem' : marks.find((one) => one !== undefined);
  return mark ? { mark } : {};
}

/** The yardstick of 33 CFR 183.455 is told, never taken as a pass. */
function yardstick(ratingA: number, ampacityA: number): string {
  const past = ratingA > 1.5 * ampacityA + 1e-9;
  return `that is ${past ? 'past' : 'within'} the 150 % yardstick of 33 CFR 183.455, which is no pass here`;
}

function overConductor(about: Case, { fuse, ratingA, conductor }: Pair): Verdict<'fuse-over-conductor'> {
  const { id, ampacityA } = conductor;
  return {
    level: 'stop',
    of: [fuse.id, id],
    message: `the ${amps(ratingA)} fuse ${fuse.id} is above the ${amps(ampacityA)} that ${id} (${sizeText(about.job, conductor)}) carries${narrowestZone(conductor, 'stop')}; ${yardstick(ratingA, ampacityA)}`,
    value: ratingA,
    limit: ampacityA,
    unit: 'A',
    remedy: `fit a fuse of at most ${amps(ampacityA)}, or run a larger conductor${insteadText(about.job, conductor)}`,
    ...factorMark([conductor]),
    ...(fuse.chosen === 'given' ? fuseSpot(about.job, fuse) : wireSpot(about, id)),
  };
}

/** A fuse that the plan holds against conductors that it does not list. */
function overUnlisted(about: Case, fuse: PlanFuse): Verdict<'fuse-over-conductor'>[] {
  const { ratingA, leastAmpacityA } = fuse;
  if (ratingA === null || leastAmpacityA === null || ratingA <= leastAmpacityA) return [];
  return [
    {
      level: 'stop',
      of: [fuse.id, ...fuse.protects],
      message: `the ${amps(ratingA)} fuse ${fuse.id} is above the ${amps(leastAmpacityA)} of the weakest of the ${counted(fuse.protects.length, 'conductor')} that it protects; ${yardstick(ratingA, leastAmpacityA)}`,
      value: ratingA,
      limit: leastAmpacityA,
      unit: 'A',
      remedy: `fit a fuse of at most ${amps(leastAmpacityA)}, or larger conductors`,
      ...factorMark(about.plan.power.conductors.filter(({ id }) => fuse.protects.includes(id))),
      ...fuseSpot(about.job, fuse),
    },
  ];
}

const fuseOverConductor: Rule = {
  id: 'fuse-over-conductor',
  judge(about) {
    const over = protectedPairs(about).filter(({ ratingA, conductor }) => ratingA > conductor.ampacityA);
    const told = new Set(over.map(({ fuse }) => fuse.id));
    return [
      ...over.map((pair) => overConductor(about, pair)),
      ...about.plan.power.fuses
        .filter(({ id }) => !told.has(id))
        .flatMap((fuse) => overUnlisted(about, fuse)),
    ];
  },
};

const fuseOverWarmConductor: Rule = {
  id: 'fuse-over-warm-conductor',
  judge(about) {
    return protectedPairs(about).flatMap(
      ({ fuse, ratingA, conductor }): Verdict<'fuse-over-warm-conductor'>[] => {
        const { id, ampacityA, cautionA } = conductor;
        if (ratingA > ampacityA || ratingA <= cautionA) return [];
        return [
          {
            level: 'caution',
            of: [fuse.id, id],
            message: `${id} (${sizeText(about.job, conductor)}) carries ${amps(ampacityA)} by the published figure, but ${amps(cautionA)} at the true ambient, under loom or in its bundle${narrowestZone(conductor, 'caution')}; its fuse ${fuse.id} is ${amps(ratingA)}`,
            value: ratingA,
            limit: cautionA,
            unit: 'A',
            remedy: `use a reel with insulation: 125 C or 200 C (wire: at ${id}), a larger size: there, a second feed, a shorter run in the engine bay, or a fuse of at most ${amps(cautionA)} (${fuse.id.includes('.') ? `fuses: at ${deviceIdOf(fuse.id)}` : `fuse: at ${fuse.id}`})`,
            writesAt: [linkEntry(id)],
            mark: narrowest(conductor, 'caution')?.mark ?? 'cp',
            ...wireSpot(about, id),
          },
        ];
      },
    );
  },
};

const conductorUnderNeed: Rule = {
  id: 'conductor-under-need',
  judge(about) {
    const told = new Set(
      protectedPairs(about)
        .filter(({ ratingA, conductor }) => ratingA > conductor.ampacityA)
        .map(({ conductor }) => conductor.id),
    );
    const own = new Set(jobWires(about).map(({ id }) => id));
    return about.plan.power.conductors.flatMap((conductor): Verdict<'conductor-under-need'>[] => {
      const { id, ampacityA, neededA } = conductor;
      // One that carries nothing at all has a rule of its own.
      if (told.has(id) || !own.has(id) || ampacityA <= 0 || neededA <= ampacityA) return [];
      return [
        {
          level: 'stop',
          of: [id],
          message: `${id} (${sizeText(about.job, conductor)}) carries ${amps(ampacityA)}, and the fuses on its way let ${ampsDrawn(neededA)} flow`,
          value: neededA,
          limit: ampacityA,
          unit: 'A',
          remedy: `run a larger size${insteadText(about.job, conductor)}, or smaller fuses`,
          ...factorMark([conductor]),
          ...wireSpot(about, id),
        },
      ];
    });
  },
};

const conductorPastLimit: Rule = {
  id: 'conductor-past-limit',
  judge(about) {
    return about.plan.power.conductors.flatMap((conductor) =>
      conductor.limits
        .filter(({ unit, value, limit }) => unit !== 'A' && value > limit)
        .map(
          ({ what, zone, value, limit, unit, level, citation, mark }): Verdict<'conductor-past-limit'> => ({
            level,
            of: [conductor.id, ...(zone === undefined ? [] : [zone])],
            message: `${conductor.id} (${conductor.size.label}) is past its limit for ${what}: ${past(value, unit)}, where ${allowed(limit, unit)} is allowed`,
            value,
            limit,
            unit,
            remedy: 'choose a larger conductor or a shorter run',
            source: citation,
            ...(mark && { mark }),
            ...wireSpot(about, conductor.id),
          }),
        ),
    );
  },
};

export const fuseAndConductorRules: readonly Rule[] = [
  fuseOverConductor,
  conductorUnderNeed,
  fuseOverWarmConductor,
  conductorPastLimit,
];

/** What passes a limit, and the limit, each to its own side. */
const past = (value: number, unit: string): string =>
  unit === 'A' ? ampsDrawn(value) : `${figure(value)} ${unit}`;
const allowed = (limit: number, unit: string): string =>
  unit === 'A' ? amps(limit) : `${figure(limit)} ${unit}`;
