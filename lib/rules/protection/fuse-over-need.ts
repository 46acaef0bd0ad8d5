import type { PlanFuse, PlanRun } from '../../model/plan/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { supplyOf } from '../../plan/power/device-loads.ts';
import { isChafed } from '../conductors/grommets.ts';
import { houseRule } from '../house-rule-of.ts';
import { type LiveSide, liveSide, reached } from '../live-side.ts';
import { deviceOf, fuseSpot, jobWires } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, figure, listed } from '../words.ts';

/** True where a battery, a bank or a charger stands behind a fuse too: what flows to it is no device's. */
function feedsSource(side: LiveSide, { id }: PlanFuse): boolean {
  const own = side.edges.find((edge) => edge.kind === 'fuse' && edge.id === id);
  if (!own) return true;
  return own.ends.every((end) => {
    const beyond = reached(side.edges, [end], (edge) => edge !== own);
    return side.sources.some((source) => beyond.has(source));
  });
}

/** The fuses that the makers of all devices behind a fuse state, together (A). */
function makersA({ job }: Case, { loads }: PlanFuse): number {
  return loads.reduce((sum, id) => sum + (supplyOf(deviceOf(job, id)?.spec ?? null)?.fuse ?? 0), 0);
}

/** The least rating that is made for what flows at rated power, with the margin of the house (A). */
function leastMadeA({ job }: Case, { form, ratedA }: PlanFuse): number {
  const askedA = ratedA * houseRule(job, 'fuse-margin').value;
  return fuseForms[form].ratingsA.find((made) => made >= askedA - 1e-9) ?? askedA;
}

/** Conductors behind a fuse, and grounds of what it feeds, that carry less than it lets through. */
function tooThin(about: Case, { loads, protects }: PlanFuse, ratingA: number): readonly string[] {
  const own = new Set(jobWires(about).map(({ id }) => id));
  return about.plan.power.conductors
    .filter(({ id }) => own.has(id))
    .filter(({ id, from, to, role, ampacityA, neededA }) => {
      if (ampacityA <= 0 || ampacityA >= Math.min(neededA, ratingA)) return false;
      const isGround = role === 'ground' && neededA >= ratingA;
      return protects.includes(id) || (isGround && (loads.length > 1 || touches(loads, from, to)));
    })
    .map(({ id }) => id);
}

const touches = (loads: readonly string[], from: string, to: string): boolean =>
  loads.some((load) => [from, to].some((end) => end.startsWith(`${load}.`)));

/** Runs of what a fuse protects that no grommet of the catalogue fits. */
function chafed(about: Case, { protects }: PlanFuse): readonly PlanRun[] {
  return about.plan.runs.filter(
    (run) => run.wires.some((wire) => protects.includes(wire)) && isChafed(about, run),
  );
}

/** What so large a fuse drags along. */
function whatFollows(thin: readonly string[], bare: readonly PlanRun[]): string {
  if (thin.length > 0) return `${listed(thin)} ${thin.length === 1 ? 'carries' : 'carry'} less`;
  const grows = 'every conductor behind it, and its ground, grows with it';
  return bare.length === 0
    ? grows
    : `${grows}, and no grommet of the catalogue fits that in ${listed(bare.map(({ id }) => id))}`;
}

const overNeed: Rule = {
  id: 'fuse-over-need',
  judge(about) {
    const { value: share, from } = houseRule(about.job, 'fuse-over-need');
    const side = liveSide(about);
    return about.plan.power.fuses.flatMap((fuse): Verdict<'fuse-over-need'>[] => {
      const { id, ratingA, ceilingA, chosen, loads } = fuse;
      // The ceiling of one device is a finding of its own.
      if (ratingA === null || chosen !== 'given' || ceilingA !== null || loads.length === 0) return [];
      if (deviceOf(about.job, fuse.item)?.origin !== 'job' || feedsSource(side, fuse)) return [];
      const leastA = leastMadeA(about, fuse);
      if (ratingA <= leastA) return [];
      const thin = tooThin(about, fuse, ratingA);
      const limit = Math.max(share * makersA(about, fuse), leastA);
      if (ratingA <= limit + 1e-9 && thin.length === 0) return [];
      const bare = chafed(about, fuse);
      const grave = thin.length > 0 || bare.length > 0;
      return [
        {
          level: grave ? 'stop' : 'caution',
          of: [id, ...thin],
          message: `the ${amps(ratingA)} fuse ${id} is larger than what it feeds asks for: ${listed(loads)} ${loads.length === 1 ? 'has' : 'together have'} fuses of ${amps(makersA(about, fuse))} by their makers, of which ${figure(share)} times is ${amps(share * makersA(about, fuse))}, and ${amps(leastA)} does for what flows; ${whatFollows(thin, bare)}`,
          value: ratingA,
          limit: thin.length > 0 ? leastA : limit,
          unit: 'A',
          remedy: `fit ${amps(leastA)}, or leave fuse: out to have it chosen`,
          ...from,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const fuseOverNeedRules: readonly Rule[] = [overNeed];
