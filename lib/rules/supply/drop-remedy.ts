import type { DropPart } from '../../model/plan/index.ts';
import { linkEntry } from '../../model/ports/pair-name.ts';
import type { RemarkBody } from '../../model/remark.ts';
import { ratedPoint } from '../operating-point.ts';
import type { Case } from '../rule.ts';
import { lengthAskedIn, listed, volts, voltsLost } from '../words.ts';
import { largerConductors, largerTogether, leastThatSaves } from './larger-conductors.ts';

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

/** A drop that is too much: of which device, by how much, and what the device still gets at its terminals (V). */
export interface DropOver {
  readonly item: string;
  readonly excessV: number;
  readonly getsV: number;
}

/**
 * What helps against a drop: where little is too much, the length off the tape; then a larger conductor where one by itself
 * does, or several together, of sizes that there are and that go into their ports; else what takes fuses, joints or body
 * off the way, for no conductor mends a joint, and that it may be accepted, with how far the device is from cutting out.
 */
export function dropRemedy(
  about: Case,
  parts: readonly DropPart[],
  over: DropOver,
): Pick<RemarkBody, 'remedy' | 'writesAt'> {
  const { excessV } = over;
  const conductors = parts.filter(({ kind }) => kind === 'conductor').toSorted((a, b) => b.dropV - a.dropV);
  const [most] = conductors;
  if (!most) return { remedy: 'run a larger feed or ground, shorten them, or put a battery nearer' };
  const each = conductors.map((one) => largerConductors(about, one));
  const size = leastThatSaves(each[0] ?? [], excessV);
  const loses = `${most.of}, which loses ${voltsLost(most.dropV)}`;
  if (size)
    return {
      remedy:
        excessV <= most.dropV * about.job.rules['length-off'].value
          ? `measure ${loses}, along its way, and write what the tape reads as length: at its link where that is less; or ${shorterBy(about, most, excessV)}; or else run it in ${size.text}`
          : `run ${loses}, in ${size.text}; or ${shorterBy(about, most, excessV)}; or put a battery nearer`,
      writesAt: [linkEntry(most.of)],
    };
  const shorter = most.dropV > excessV ? `${shorterBy(about, most, excessV, most.of)}; or ` : '';
  const together = largerTogether(each, excessV);
  if (together)
    return {
      remedy: `run ${listed(together.map(({ of, text }) => `${of} in ${text}`))}; or ${shorter}put a battery nearer`,
      writesAt: together.map(({ of }) => linkEntry(of)),
    };
  return { remedy: withoutCopper(about, parts, { ...over, shorter, isLarger: each.flat().length > 0 }) };
}

/** What is left where no conductor that there is mends a drop. */
function withoutCopper(
  about: Case,
  parts: readonly DropPart[],
  { item, getsV, shorter, isLarger }: DropOver & { readonly shorter: string; readonly isLarger: boolean },
): string {
  const others = parts.filter(({ kind }) => kind !== 'conductor').slice(0, 2);
  const names = others.map(({ kind, of, dropV }) => `${kind} ${of} (${voltsLost(dropV)})`);
  const why = isLarger
    ? 'larger conductors alone do not mend it, in the largest sizes of the catalogue that go into their ports'
    : 'larger conductors alone do not mend it: the catalogue has none that goes into their ports';
  return `${why}; ${shorter}take a fuse or a joint off the way${names.length > 0 ? `, first of all ${listed(names, 'or')}` : ''}, run a second lead behind its own fuse, or put a battery nearer${acceptText(about, item, getsV)}`;
}

/** What it means to leave a drop as it is, where that leaves the device playing. */
function acceptText(about: Case, item: string, getsV: number): string {
  const load = ratedPoint(about)?.elements.find(({ kind, of }) => kind === 'load' && of === item);
  const cutoutV = load?.cutoutV;
  if (cutoutV === undefined || getsV <= cutoutV) return '';
  return `; or accept it: at rated power ${item} still gets ${volts(getsV)}, and cuts out at ${volts(cutoutV)}`;
}

/** By how much one conductor would have to be shorter: its drop goes as its length (Ohm's law). */
function shorterBy({ job, plan }: Case, { of, dropV }: DropPart, excessV: number, what = 'it'): string {
  const lengthM = plan.wires.find(({ id }) => id === of)?.lengthM ?? 0;
  const length = lengthAskedIn(job);
  return `make ${what} shorter by ${length((lengthM * excessV) / dropV)}, by another way or another place of the board`;
}
