import { fuseCeilingA } from '../../model/kinds/fields/supply.ts';
import { pointer } from '../../model/place.ts';
import type { PlanFuse } from '../../model/plan/index.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { Advice } from '../../model/remark.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { supplyOf } from '../../plan/power/device-loads.ts';
import { flowText } from '../../read/yaml/write-value.ts';
import { deviceOf, fuseSpot, partOf } from '../look-up.ts';
import type { Case } from '../rule.ts';
import { amps, listed } from '../words.ts';

interface Remedy {
  readonly remedy: string;
  readonly advice?: readonly Advice[];
}

/** A fuse as it is found on the bench: `dist.TAP (mini blade, way TAP of dist)`. */
export function fuseWords({ id, item, way, form }: PlanFuse): string {
  return `${id} (${fuseForms[form].name}${way === '' ? '' : `, way ${way} of ${item}`})`;
}

/** Of whose maker the ceiling of a fuse is: of those that it feeds, what states it. */
export function ceilingOf({ job }: Pick<Case, 'job'>, { loads, ceilingA }: PlanFuse): string {
  const stating = loads.filter((id) => {
    const supply = supplyOf(deviceOf(job, id)?.spec ?? null);
    return supply && fuseCeilingA(supply) === ceilingA;
  });
  const named = stating.length > 0 ? stating : loads;
  return named.length > 0 ? listed(named) : 'what it feeds';
}

/** True where no fuse of its form is made as small as the maker of a device allows. */
export function isMadeTooLarge(fuse: PlanFuse): boolean {
  const { ceilingA, ratedA } = fuse;
  return ceilingA !== null && ratedA <= ceilingA && leastMadeA(fuse) > ceilingA;
}

/** What to write where a fuse is above what the maker of a device allows, or its form is not made as small. */
export function smallerFuse(about: Case, fuse: PlanFuse, ceilingA: number): Remedy {
  const name = fuseForms[fuse.form].name;
  const apart = `feed ${ceilingOf(about, fuse)} by itself, through a holder for a fuse of at most ${amps(ceilingA)}`;
  return (
    madeSmaller(about, fuse, ceilingA) ??
    holderBetween(about, fuse, ceilingA) ?? {
      remedy: isMadeTooLarge(fuse)
        ? `${name} fuses are made from ${amps(leastMadeA(fuse))} up: ${apart}`
        : apart,
    }
  );
}

const leastMadeA = ({ form }: PlanFuse): number => Math.min(...fuseForms[form].ratingsA);

/** The largest rating of the same form that the maker allows, for conductors and holder too; null where none carries the load. */
function madeSmaller({ job }: Case, fuse: PlanFuse, ceilingA: number): Remedy | null {
  const { form, ratedA, leastAmpacityA, holderA, way, item } = fuse;
  const mostA = Math.min(ceilingA, leastAmpacityA ?? ceilingA, holderA ?? ceilingA);
  const madeA = fuseForms[form].ratingsA.findLast((one) => one <= mostA && one >= ratedA);
  if (madeA === undefined) return null;
  const value = amps(madeA);
  const line = way === '' ? `fuse: ${value}` : `fuses: ${flowText({ [way]: value })}`;
  return {
    remedy: `write ${line} of ${item}: a fuse of at most ${amps(ceilingA)}`,
    advice: [[{ ...fuseSpot(job, fuse), value }]],
  };
}

/**
 * A holder of another form, on the shelf or in the catalogue, between a way that no small enough fuse is made for and
 * the one device that it feeds; null where there is none, or where no written or proposed link leads from the way.
 */
function holderBetween({ job, plan }: Case, fuse: PlanFuse, ceilingA: number): Remedy | null {
  const [load] = fuse.loads;
  const [fit] = fuse.alternatives.flatMap(({ form, ratingA, parts }) =>
    parts.flatMap((id) => {
      const part = partOf(job, id);
      return part?.kind === 'fuse-holder' && part['fuse-form'] === form && ratingA <= ceilingA
        ? [{ id, part, ratingA }]
        : [];
    }),
  );
  const link = job.links.find(({ from }) => `${from.device}.${from.terminal}` === fuse.id);
  const seat = plan.items.find(({ id }) => id === fuse.item);
  if (!fit || !link || load === undefined || !seat || fuse.loads.length > 1) return null;
  const [into, out] = (['feed-in', 'feed-out'] as const).map(
    (role) => Object.entries(fit.part.terminals).find(([, one]) => one.role === role)?.[0],
  );
  if (into === undefined || out === undefined) return null;
  const name = `fuse-${load}`;
  if (deviceOf(job, name)) return null;
  const place: Record<string, string> = seat.board === null ? { in: seat.seat ?? '' } : { on: seat.board };
  const device = { part: fit.id, ...place, fuse: amps(fit.ratingA) };
  const { device: toDevice, terminal } = link.to;
  const wayA = fuseForms[fuse.form].ratingsA.find((one) => one >= fuse.ratedA) ?? leastMadeA(fuse);
  const given: Advice = fuse.chosen === 'given' ? [{ ...fuseSpot(job, fuse), value: amps(wayA) }] : [];
  const { units } = job.shop;
  const besideM = job.rules['fuse-distance-good'].value;
  // Beside the block; on a board its way is measured.
  const tail: Record<string, string> = {
    from: fuse.id,
    to: `${name}.${into}`,
    ...(seat.board === null && { length: tapeText(besideM, units) }),
  };
  const lead: Record<string, string> = {
    from: `${name}.${out}`,
    to: `${toDevice}.${terminal}`,
    ...(link.given?.length !== undefined && { length: tapeText(link.given.length, units) }),
  };
  return {
    remedy: `way ${fuse.way} takes ${fuseForms[fuse.form].name} fuses, which are made from ${amps(leastMadeA(fuse))} up; put a holder between: write ${name}: ${flowText(device)} under devices:, and under links: ${name}-tail: ${flowText(tail)} and ${link.id}: ${flowText(lead)}${given.length > 0 ? `, and ${amps(wayA)} for ${fuse.id}` : ''}`,
    advice: [
      [
        { path: pointer(['devices', name]), value: device },
        { path: pointer(['links', `${name}-tail`]), value: tail },
        { path: pointer(['links', link.id]), value: lead },
        ...given,
      ],
    ],
  };
}
