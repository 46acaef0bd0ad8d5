import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { insulationColumn } from '../../model/tables/ampacity.ts';
import { ambientRules } from '../../model/zone-ambient.ts';
import { houseRule, type Source } from '../house-rule-of.ts';
import { hasSize, jobWires, partOf, terminalSpecOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { celsius, listed } from '../words.ts';
import { zoneRemedy } from './zone-spots.ts';

/** Insulation temperature of a wire (C): of its conductor in the plan, else of its part; unmarked counts as 60 C. */
function insulationC({ job, plan }: Case, wire: PlanWire): number | null {
  const conductor = plan.power.conductors.find(({ id }) => id === wire.id);
  if (conductor) return conductor.insulationC;
  const cable = plan.cables.find(({ id }) => id === wire.cable);
  const part = partOf(job, wire.part ?? cable?.part ?? null);
  if (part?.kind !== 'wire' && part?.kind !== 'cable') return null;
  return part.insulation ?? job.rules['insulation-unmarked'].value;
}

interface HotZone {
  readonly zone: PlanWire['zones'][number]['zone'];
  readonly value: number;
  readonly from: Source;
}

/** The zone where the insulation of a wire fails: the hottest that reaches its rating, else one that the plan found. */
function failingZone(about: Case, wire: PlanWire, ratedC: number | null): HotZone | undefined {
  const [hottest, ...cooler] = wire.zones
    .map(({ zone }): HotZone => ({ zone, ...houseRule(about.job, ambientRules[zone]) }))
    .toSorted((a, b) => b.value - a.value);
  if (hottest && ratedC !== null && ratedC <= hottest.value) return hottest;
  const limits = about.plan.power.conductors.find(({ id }) => id === wire.id)?.limits ?? [];
  const dead = limits.filter(({ unit, level, limit }) => unit === 'A' && level === 'stop' && !(limit > 0));
  return [...(hottest ? [hottest] : []), ...cooler].find(({ zone }) => dead.some((one) => one.zone === zone));
}

/** As many reels of other uses are told: one for each conductor of a pair. */
const mostOthers = 2;

/**
 * The reels for a speaker wire that go into its terminals and whose insulation is for more than an ambient, those kept for
 * other wires where there is none, and the line that takes one; null where there is none, and for what a fuse limits, where the size goes with the insulation.
 */
function hotterReels({ job }: Case, wire: PlanWire, ambientC: number): string | null {
  const link = job.links.find(({ id }) => id === wire.id);
  if (wire.role !== 'speaker' || !link || link.cable) return null;
  const lasting = partsOfKind(job.parts, 'wire').flatMap(([id, part]) => {
    const lasts = (insulationColumn(part.insulation ?? 0) ?? 0) > ambientC;
    const sizes = wire.ends.every((end) => {
      const spec = terminalSpecOf(job, end.terminal);
      const takes = end.form === 'supplied-lead' ? undefined : spec?.takes;
      return !takes || (part.size.areaMm2 >= takes.from.areaMm2 && part.size.areaMm2 <= takes.to.areaMm2);
    });
    const offMm2 = Math.abs(part.size.areaMm2 - (wire.size.areaMm2 ?? 0));
    return lasts && sizes ? [{ id, isFor: part.for.includes(wire.role), offMm2 }] : [];
  });
  const own = lasting.filter(({ isFor }) => isFor);
  // Where no reel for speakers lasts, one of about the size that is kept for other wires does as well: the job names it.
  const others = lasting.toSorted((a, b) => a.offMm2 - b.offMm2).slice(0, mostOthers);
  const reels = (own.length > 0 ? own : others).map(({ id }) => id);
  const [first] = reels.toSorted((a, b) => reelOrder(job, wire, a) - reelOrder(job, wire, b));
  if (first === undefined) return null;
  const name = wire.id.replace(/\.\+$/, '-plus').replace(/\.-$/, '-minus');
  const parted = name === wire.id ? '' : `, in place of ${wire.link}`;
  return `${listed(reels)} would do: write wire: ${first} under links: ${name}: { from: ${wire.from}, to: ${wire.to}, wire: ${first} }${parted}`;
}

/** A minus takes black first, a plus anything else. */
function reelOrder({ parts }: Pick<Job, 'parts'>, { id }: PlanWire, reel: string): number {
  const part = parts[reel];
  const isBlack = part?.kind === 'wire' && part.colour === 'BK';
  return Number(isBlack !== /[.-](-|minus|neg)$/.test(id));
}

/** A conductor for which the plan knows no ampacity, and not for its insulation. */
function carriesNothing(about: Case, { id, size }: PlanWire): Verdict<'insulation-at-ambient'>[] {
  const conductor = about.plan.power.conductors.find((one) => one.id === id);
  if (!conductor || conductor.ampacityA > 0) return [];
  return [
    {
      level: 'stop',
      of: [id],
      message: `no ampacity is known for ${id} (${size.label}): it counts as carrying nothing, at any current`,
      remedy: 'run a conductor of at least 24 AWG from a reel of the catalogue',
      ...wireSpot(about, id),
    },
  ];
}

const insulationAtAmbient: Rule = {
  id: 'insulation-at-ambient',
  judge(about) {
    return jobWires(about)
      .filter(hasSize)
      .flatMap((wire): Verdict<'insulation-at-ambient'>[] => {
        const ratedC = insulationC(about, wire);
        const hot = failingZone(about, wire, ratedC);
        if (!hot) return carriesNothing(about, wire);
        return [
          {
            level: 'stop',
            of: [wire.id, hot.zone],
            message: `the insulation of ${wire.id} is for ${ratedC === null ? 'an unknown temperature' : celsius(ratedC)}, and ${hot.zone} is ${celsius(hot.value)}: it carries nothing there, at any current`,
            ...(ratedC !== null && { value: ratedC }),
            limit: hot.value,
            unit: 'C',
            remedy: `${hotterReels(about, wire, hot.value) ?? 'use wire marked for a higher temperature (125 C in an engine bay)'}, or another route; ${zoneRemedy(about, wire, hot.zone, ratedC)}`,
            ...hot.from,
            ...wireSpot(about, wire.id),
          },
        ];
      });
  },
};

const nearExhaust: Rule = {
  id: 'near-exhaust',
  judge(about) {
    return jobWires(about).flatMap((wire): Verdict<'near-exhaust'>[] => {
      if (!wire.zones.some(({ zone }) => zone === 'near-exhaust')) return [];
      return [
        {
          level: 'stop',
          of: [wire.id],
          message: `${wire.id} passes near the exhaust`,
          remedy: 'take another route, well clear of manifold, catalyst and pipe',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

const unmarked: Rule = {
  id: 'insulation-unmarked',
  judge(about) {
    const { value: countsAsC, from } = houseRule(about.job, 'insulation-unmarked');
    const parts = new Map<string, string[]>();
    for (const wire of jobWires(about)) {
      const part = partOf(about.job, wire.part);
      const carries = wire.role === 'power' || wire.role === 'ground';
      if (wire.part === null || part?.kind !== 'wire' || part.insulation !== undefined || !carries) continue;
      parts.set(wire.part, [...(parts.get(wire.part) ?? []), wire.id]);
    }
    return [...parts].map(([part, wires]): Verdict<'insulation-unmarked'> => {
      return {
        level: 'note',
        of: [part, ...wires],
        message: `${part} bears no insulation temperature: it counts as ${celsius(countsAsC)}`,
        value: countsAsC,
        unit: 'C',
        remedy: 'read what is printed on the cable and write it as insulation: in its part',
        ...from,
        path: pointer(['parts', part]),
        file: 'part',
      };
    });
  },
};

const coveringTooHot: Rule = {
  id: 'covering-too-hot',
  judge(about) {
    return about.job.runs.flatMap((run): Verdict<'covering-too-hot'>[] => {
      const covering = partOf(about.job, run.covering);
      if (covering?.kind !== 'covering' || run.covering === null) return [];
      const hottest = run.route.passes
        .map(({ zone }) => ({ zone, ambientC: houseRule(about.job, ambientRules[zone]).value }))
        .toSorted((a, b) => b.ambientC - a.ambientC)[0];
      if (!hottest || covering.withstands >= hottest.ambientC) return [];
      return [
        {
          level: 'caution',
          of: [run.id, run.covering],
          message: `the covering ${run.covering} of ${run.id} withstands ${celsius(covering.withstands)}, and ${hottest.zone} is ${celsius(hottest.ambientC)}`,
          value: covering.withstands,
          limit: hottest.ambientC,
          unit: 'C',
          remedy: 'use a covering for the temperature',
          path: run.path,
        },
      ];
    });
  },
};

export const insulationRules: readonly Rule[] = [insulationAtAmbient, nearExhaust, coveringTooHot, unmarked];
