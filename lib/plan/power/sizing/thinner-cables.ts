import type { CableCandidate, JudgedCable } from '../../../power/conductor/conductor-choice.ts';
import type { ConductorTask } from './conductor-task.ts';

/** What of the judged cables is thinner than one, thick to thin. */
export function thinnerThan(
  { size }: CableCandidate,
  judged: readonly JudgedCable[],
): readonly JudgedCable[] {
  return judged.filter(({ candidate }) => candidate.size.areaMm2 < size.areaMm2 / 1.001).toReversed();
}

/**
 * The thinnest cable below the chosen one that carries the fuse and goes in, and whose lengths on the shelf are too short.
 * That an earlier round took a thicker one says nothing; that a drop or a feed asked for it does.
 */
export function shortOnShelf(
  { why, leastMm2 }: Pick<ConductorTask, 'why' | 'leastMm2'>,
  smallestPortMm2: number,
  chosen: JudgedCable,
  considered: readonly JudgedCable[],
): CableCandidate | null {
  const askedMm2 = Math.max(smallestPortMm2, why === null ? 0 : leastMm2);
  const short = thinnerThan(chosen.candidate, considered).filter(
    ({ candidate, misses, doubt }) =>
      candidate.size.areaMm2 >= askedMm2 / 1.001 &&
      misses.some(({ limit }) => limit === 'stock') &&
      misses.every(({ limit }) => limit === 'stock' || limit === 'least-size') &&
      (doubt === null || chosen.doubt !== null),
  );
  return short.at(-1)?.candidate ?? null;
}
