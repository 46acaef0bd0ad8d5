import type { CableCandidate } from '../../../power/conductor/conductor-choice.ts';

/** Areas within a tenth of a per cent are the same size. */
const grace = 1.001;

/**
 * The next larger size that a conductor may grow to (mm2): of what lies on the shelf in one piece, else of what can be
 * bought; null where there is none.
 */
export function nextSizeMm2(
  candidates: readonly CableCandidate[],
  { size }: CableCandidate,
  lengthM: number,
): number | null {
  const larger = candidates.filter((one) => one.size.areaMm2 > size.areaMm2 * grace);
  const onShelf = larger.filter(({ stockM = 0 }) => stockM >= lengthM);
  const areas = (onShelf.length > 0 ? onShelf : larger).map((one) => one.size.areaMm2);
  return areas.length > 0 ? Math.min(...areas) : null;
}
