/** A splice that joins wires: crimped end to end, or soldered in a sleeve. Areas are those that its maker takes (mm2). */
export interface Splice {
  readonly form: 'butt-splice' | 'solder-sleeve';
  readonly smallestMm2: number;
  readonly largestMm2: number;
  /** Of a butt splice whose barrels differ: what the other one takes. */
  readonly other?: Barrel;
}

type Barrel = Pick<Splice, 'smallestMm2' | 'largestMm2'>;

/** Areas within a tenth of a per cent are the same size. */
const grace = 1.001;

/** True for a barrel that takes an area, or so many times its range for several that lie together. */
function holds({ smallestMm2, largestMm2 }: Barrel, areaMm2: number, count = 1): boolean {
  return areaMm2 * grace >= count * smallestMm2 && areaMm2 <= count * largestMm2 * grace;
}

/** True for a splice that takes one area at each of its sides, whichever is put into which. */
function holdsBoth(splice: Splice, oneMm2: number, otherMm2: number): boolean {
  const { other = splice } = splice;
  return (
    (holds(splice, oneMm2) && holds(other, otherMm2)) || (holds(other, oneMm2) && holds(splice, otherMm2))
  );
}

/**
 * True for a splice that takes a wire which is opened for it and another that is joined there. Of a butt splice the one
 * barrel holds the wire to the port, the other its far part and the joined wire side by side: the sum of areas counts. A
 * sleeve is made for two conductors that lie over each other, and holds three: all of them together are within what two
 * of its range have. Common practice, no source: the maker of the splice governs.
 */
export function spliceTakes(splice: Splice, trunkMm2: number, joinedMm2: number): boolean {
  return splice.form === 'solder-sleeve'
    ? holds(splice, 2 * trunkMm2 + joinedMm2, 2)
    : holdsBoth(splice, trunkMm2, trunkMm2 + joinedMm2);
}

/**
 * True for a splice that takes the ends of two wires, one from each side. Either of them is within its range, in a barrel of
 * its own or laid over the other in the sleeve; of a splice that steps down each within that of its own barrel. Common
 * practice, no source: the maker of the splice governs.
 */
export function spliceJoins(splice: Splice, ...areasMm2: readonly [number, number]): boolean {
  return holdsBoth(splice, ...areasMm2);
}

/**
 * Which of two ends, 0 or 1, is stripped twice as far and folded back on itself so that a butt splice takes both: the one
 * that is too thin for its barrel by itself, and fills it twice. Null where that does not help, or where they go in as
 * they are. Common practice, no source: the maker of the splice governs.
 */
export function foldedEnd(splice: Splice, ...areasMm2: readonly [number, number]): 0 | 1 | null {
  if (splice.form !== 'butt-splice' || spliceJoins(splice, ...areasMm2)) return null;
  const [first, second] = areasMm2;
  if (spliceJoins(splice, 2 * first, second) && first < second) return 0;
  return spliceJoins(splice, first, 2 * second) && second < first ? 1 : null;
}
