import { pointer } from '../../model/place.ts';
import { longestLengthM } from '../../shelf/shelf-lengths.ts';
import { promisedText } from '../data/promised.ts';
import { houseRule } from '../house-rule-of.ts';
import { ratedDrops } from '../operating-point.ts';
import type { Case, Spot } from '../rule.ts';
import { lengthIn, listed } from '../words.ts';

/** The conductors of a bundle with their sizes, the thickest first: `main 4 AWG, remote 18 AWG`. */
export function bundleText({ plan }: Case, wires: readonly string[]): string {
  const sizes = new Map<string, { readonly areaMm2: number; readonly names: Set<string> }>();
  for (const { id, size, cable } of plan.wires) {
    if (!wires.includes(id)) continue;
    const own = sizes.get(size.label) ?? { areaMm2: size.areaMm2, names: new Set<string>() };
    own.names.add(cable ?? id);
    sizes.set(size.label, own);
  }
  return [...sizes]
    .toSorted(([, a], [, b]) => b.areaMm2 - a.areaMm2)
    .map(([label, { names }]) => `${listed([...names])} ${label}`)
    .join(', ');
}

/**
 * Why the thickest conductor of a bundle is so thick, where the plan chose it, with what to write for a thinner one; null
 * where none was chosen.
 */
export function thinnerText({ plan }: Case, wires: readonly string[]): string | null {
  const [thickest] = plan.power.conductors
    .filter(({ id, chosen }) => chosen === 'computed' && wires.includes(id))
    .toSorted((a, b) => b.size.areaMm2 - a.size.areaMm2);
  return thickest
    ? `write a thinner size: at the link ${thickest.id}, where what asks for its size may stand as a caution (${thickest.reason})`
    : null;
}

/** A conductor that is thicker than it need be: what is told first, and what mends it. */
interface Thickened {
  readonly message: string;
  readonly remedy: string;
}

/**
 * True where the drop of every device behind a conductor stays in its limit with the resistance of that conductor so many
 * times as great, by Ohm's law at the currents of the plan.
 */
function keepsDrop(about: Case, conductor: string, times: number): boolean {
  const { value: limit } = houseRule(about.job, 'drop-limit');
  return ratedDrops(about).every(({ parts = [], share, feedDropV, groundDropV }) => {
    const own = parts.filter(({ kind, of }) => kind === 'conductor' && of === conductor);
    if (own.length === 0) return true;
    const wholeV = (feedDropV ?? 0) + (groundDropV ?? 0);
    const addedV = own.reduce((sum, { dropV }) => sum + dropV * (times - 1), 0);
    return share !== null && wholeV > 0 && share * (1 + addedV / wholeV) <= limit;
  });
}

/** Conductors of a bundle that are so thick since no length on the shelf of a thinner cable is long enough. */
export function thickenedBy(about: Case, wires: readonly string[]): readonly Thickened[] {
  const { job, plan } = about;
  return plan.power.conductors.flatMap(({ id, size, lengthM, shortOf }): Thickened[] => {
    if (!shortOf || !wires.includes(id) || !keepsDrop(about, id, size.areaMm2 / shortOf.size.areaMm2))
      return [];
    const { part } = shortOf;
    const spot: Spot = { path: pointer(['stock', part]), file: 'shop' };
    const length = lengthIn(job, spot);
    const longest = length(longestLengthM(job.shop.stock[part]));
    return [
      {
        message: `${id} is ${size.label} since no length of ${part} on the shelf is long enough (${shortOf.size.label} would do): it takes ${length(lengthM)}, the longest there is ${longest}${promisedText(job, part, length)}`,
        remedy: `order ${part} for ${id}, write its reel under stock: of the shop file, and the size is chosen anew`,
      },
    ];
  });
}
