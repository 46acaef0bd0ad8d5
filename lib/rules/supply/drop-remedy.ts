import type { DropPart } from '../../model/plan/index.ts';
import { linkEntry } from '../../model/ports/pair-name.ts';
import type { RemarkBody } from '../../model/remark.ts';
import { entersPorts, fitsPorts } from '../../plan/power/sizing/ports-fit.ts';
import { candidatesFor } from '../../plan/wiring/cable-candidates.ts';
import { devicesById } from '../../plan/wiring/conductor-role.ts';
import { type CableCandidate, cableSm } from '../../power/conductor/conductor-choice.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import type { Case } from '../rule.ts';
import { lengthAskedIn, listed, voltsLost } from '../words.ts';

/** Kinds of what a drop is lost in, as a finding names them. */
const partNames = {
  conductor: 'conductors',
  fuse: 'fuses',
  joint: 'joints',
  body: 'the body',
} as const satisfies Readonly<Record<DropPart['kind'], string>>;
const partKinds = ['conductor', 'fuse', 'joint', 'body'] as const;

function lostIn(parts: readonly DropPart[], kind: DropPart['kind']): number {
  return parts.reduce((sum, part) => sum + (part.kind === kind ? part.dropV : 0), 0);
}

/** What a drop is lost in, by kind. */
export function partsText(parts: readonly DropPart[]): string {
  if (parts.length === 0) return '';
  const told = partKinds.flatMap((kind) => {
    const lostV = lostIn(parts, kind);
    return Math.abs(lostV) < 0.0005 ? [] : [`${partNames[kind]} ${voltsLost(lostV)}`];
  });
  return `; it is lost in ${listed(told)}`;
}

/**
 * What helps against a drop: where little is too much, the length off the tape; then a larger conductor where these lose
 * enough of it, the one that loses most first; else what takes fuses, joints or body off the way, for no conductor mends
 * a joint.
 */
export function dropRemedy(
  about: Case,
  parts: readonly DropPart[],
  excessV: number,
): Pick<RemarkBody, 'remedy' | 'writesAt'> {
  const conductors = parts.filter(({ kind }) => kind === 'conductor');
  const [most] = conductors.toSorted((a, b) => b.dropV - a.dropV);
  if (!most) return { remedy: 'run a larger feed or ground, shorten them, or put a battery nearer' };
  const writesAt = [linkEntry(most.of)];
  const loses = `${most.of}, which loses ${voltsLost(most.dropV)}`;
  const size = sizeFor(about, most, excessV);
  if (size !== null)
    return {
      remedy:
        excessV <= most.dropV * about.job.rules['length-off'].value
          ? `measure ${loses}, along its way, and write what the tape reads as length: at its link where that is less; or ${shorterBy(about, most, excessV)}; or else run it in ${size}`
          : `run ${loses}, in ${size}; or ${shorterBy(about, most, excessV)}; or put a battery nearer`,
      writesAt,
    };
  const saved = lostIn(parts, 'conductor');
  // Twice the copper halves a drop: more than that is no size that a port takes.
  if (saved / 2 >= excessV)
    return {
      remedy: `run ${loses}, larger (size: at the link) or shorter; or put a battery nearer`,
      writesAt,
    };
  const others = parts.filter(({ kind }) => kind !== 'conductor').slice(0, 2);
  const names = others.map(({ kind, of, dropV }) => `${kind} ${of} (${voltsLost(dropV)})`);
  const remedy = `larger conductors alone do not mend it: take a fuse or a joint off the way${names.length > 0 ? `, first of all ${listed(names, 'or')}` : ''}, run a second lead behind its own fuse, or put a battery nearer; the conductor that loses most is ${most.of}, ${voltsLost(most.dropV)}`;
  return { remedy };
}

/**
 * The least size of the catalogue by which one conductor alone takes the drop back to its limit, with what to write and
 * whether it lies on the shelf: its drop goes as one over its conductance (Ohm's law; what is regulated then draws less).
 * Null where none does, or none goes into its ports.
 */
function sizeFor({ job, plan }: Case, { of, dropV }: DropPart, excessV: number): string | null {
  const wire = plan.wires.find(({ id }) => id === of);
  const conductor = plan.power.conductors.find(({ id }) => id === of);
  const link = job.links.find(({ id }) => id === of);
  if (!wire || !conductor || !link || link.origin !== 'job' || dropV <= excessV) return null;
  const rules = powerRules(job.rules);
  const open = { ...link, given: link.given && { ...link.given, size: undefined, wire: undefined } };
  const candidates = candidatesFor(job, open, conductor.role);
  const { size, material } = conductor;
  const own = candidates.find((one) => one.size.areaMm2 === size.areaMm2 && one.material === material);
  const ownSm = cableSm(own ?? { part: '', size, material, insulationC: null }, rules);
  const needSm = (ownSm * dropV) / (dropV - excessV);
  const devices = devicesById(job);
  const enough = candidates
    .filter((one) => cableSm(one, rules) >= needSm && entersPorts(job, devices, link, one.size.areaMm2))
    .toSorted((a, b) => a.size.areaMm2 - b.size.areaMm2);
  const onShelf = ({ stockM = 0 }: CableCandidate) => stockM >= wire.lengthM;
  const [best] = [...enough.filter(onShelf), ...enough];
  if (!best) return null;
  const bought = onShelf(best) ? '' : ', which is to be bought';
  const bare = fitsPorts(job, link, best.size.areaMm2) ? '' : ', which goes into its terminal by a reducer';
  return `${best.size.label} (size: ${best.size.label} at its link)${bought}${bare}`;
}

/** By how much one conductor would have to be shorter: its drop goes as its length (Ohm's law). */
function shorterBy({ job, plan }: Case, { of, dropV }: DropPart, excessV: number): string {
  const lengthM = plan.wires.find(({ id }) => id === of)?.lengthM ?? 0;
  const length = lengthAskedIn(job);
  return `make it shorter by ${length((lengthM * excessV) / dropV)}, by another way or another place of the board`;
}
