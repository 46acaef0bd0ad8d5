import type { Link } from '../../model/content/resolved-job.ts';
import type { DropPart } from '../../model/plan/index.ts';
import { entersPorts, fitsPorts } from '../../plan/power/sizing/ports-fit.ts';
import { candidatesFor } from '../../plan/wiring/cable-candidates.ts';
import { devicesById } from '../../plan/wiring/conductor-role.ts';
import { type CableCandidate, cableSm } from '../../power/conductor/conductor-choice.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import type { Case } from '../rule.ts';

/** A conductor of a drop in a larger size: what that takes off the drop (V), and what to write for it. */
export interface LargerConductor {
  readonly of: string;
  readonly savesV: number;
  readonly isOnShelf: boolean;
  /** `4 AWG (size: 4 AWG at its link)`, with what it asks for beside. */
  readonly text: string;
}

/**
 * The sizes of the catalogue by which a conductor conducts better than now and that go into its ports, the thinnest first:
 * its drop goes as one over its conductance (Ohm's law; what is regulated then draws less). None for one of the vehicle.
 */
export function largerConductors(about: Case, { of, dropV }: DropPart): readonly LargerConductor[] {
  const { job, plan } = about;
  const wire = plan.wires.find(({ id }) => id === of);
  const conductor = plan.power.conductors.find(({ id }) => id === of);
  const link = job.links.find(({ id }) => id === of);
  if (!wire || !conductor || !link || link.origin !== 'job' || dropV <= 0) return [];
  const rules = powerRules(job.rules);
  const open = { ...link, given: link.given && { ...link.given, size: undefined, wire: undefined } };
  const candidates = candidatesFor(job, open, conductor.role);
  const { size, material } = conductor;
  const own = candidates.find((one) => one.size.areaMm2 === size.areaMm2 && one.material === material);
  const ownSm = cableSm(own ?? { part: '', size, material, insulationC: null }, rules);
  const devices = devicesById(job);
  return candidates
    .filter((one) => cableSm(one, rules) > ownSm * 1.001 && entersPorts(job, devices, link, one.size.areaMm2))
    .toSorted((a, b) => a.size.areaMm2 - b.size.areaMm2)
    .map((one) => ({
      of,
      savesV: dropV * (1 - ownSm / cableSm(one, rules)),
      ...asWritten(about, link, one, wire.lengthM),
    }));
}

function asWritten({ job }: Case, link: Link, { size, stockM = 0 }: CableCandidate, lengthM: number) {
  const isOnShelf = stockM >= lengthM;
  const bought = isOnShelf ? '' : ', which is to be bought';
  const bare = fitsPorts(job, link, size.areaMm2) ? '' : ', which goes into its terminal by a reducer';
  return { isOnShelf, text: `${size.label} (size: ${size.label} at its link)${bought}${bare}` };
}

/** The least of some sizes that takes so much off a drop (V), one on the shelf before one that is not; null for none. */
export function leastThatSaves(larger: readonly LargerConductor[], excessV: number): LargerConductor | null {
  const enough = larger.filter(({ savesV }) => savesV >= excessV - 1e-9);
  return enough.find(({ isOnShelf }) => isOnShelf) ?? enough[0] ?? null;
}

/**
 * Larger sizes of several conductors that together take so much off a drop (V), as few of them as do, those that save most
 * first and the last no larger than it has to be; null where all of them do not.
 */
export function largerTogether(
  each: readonly (readonly LargerConductor[])[],
  excessV: number,
): readonly LargerConductor[] | null {
  const most = each
    .flatMap((sizes) =>
      sizes.reduce((best, one) => (one.savesV > best.savesV ? one : best), sizes[0] ?? none),
    )
    .filter(({ savesV }) => savesV > 0)
    .toSorted((a, b) => b.savesV - a.savesV);
  const taken: LargerConductor[] = [];
  let leftV = excessV;
  for (const one of most) {
    const own = each.find(([first]) => first?.of === one.of) ?? [];
    const enough = leastThatSaves(own, leftV);
    taken.push(enough ?? one);
    if (enough) return taken;
    leftV -= one.savesV;
  }
  return null;
}

const none: LargerConductor = { of: '', savesV: 0, isOnShelf: false, text: '' };
