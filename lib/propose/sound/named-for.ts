import type { Carried } from '../../model/vocabulary.ts';
import { rowOf, speakerPart } from './bands.ts';
import type { DrivenGroup } from './signal-chain.ts';

/** What a group plays on one side, by its signal or its row; null where nothing tells. */
export function playedBy(group: DrivenGroup | null, side: 'left' | 'right' | null): Carried | null {
  if (!group) return null;
  const pair = speakerPart(group)?.band === 'subwoofer' ? 'bass' : (group.given.signal ?? rowOf(group));
  return pair === null ? null : `${pair}-${side ?? 'left'}`;
}

/**
 * Of channels, outputs or inputs that are left: the one that is named for what is played, else the first that is named
 * for nothing that another plays, else the first.
 */
export function namedFor(
  carries: Carried | null,
  left: readonly string[],
  named: ReadonlyMap<string, Carried>,
  others: readonly Carried[],
): string | undefined {
  const isOthers = (name: string) => others.some((one) => one === named.get(name));
  return (
    left.find((name) => carries !== null && named.get(name) === carries) ??
    left.find((name) => !isOthers(name)) ??
    left[0]
  );
}
