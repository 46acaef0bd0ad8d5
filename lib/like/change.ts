import type { Phrase } from '../model/phrase.ts';

/** What would have to change of a past board. */
export const changeKinds = [
  'new-outline',
  'trimmed-edge',
  'too-high',
  'too-large',
  'other-part',
  'moved-part',
  'added-part',
  'left-out',
  'kept-clear',
  'fixings',
  'exits',
  'warmth',
  'feed',
  'fuse',
  'turned',
] as const;
export type ChangeKind = (typeof changeKinds)[number];

/** One thing that would have to change, in the words of the trade. */
export interface Change {
  readonly kind: ChangeKind;
  /** Items, wires or points that it is about. */
  readonly of: readonly string[];
  /** The shop's time for it (min). */
  readonly minutes: number;
  /** True where no work on the board mends it: the space is too small for what has to stand in it. */
  readonly blocks: boolean;
  readonly told: Phrase;
}

/** Sum of the times of changes (min). */
export function minutesOf(changes: readonly Pick<Change, 'minutes'>[]): number {
  return changes.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** Changes in the order of labour: what nothing mends first, then what takes longest; those alike in the order of the list of kinds. */
export function inOrderOfLabour(changes: readonly Change[]): Change[] {
  return changes.toSorted(
    (a, b) =>
      Number(b.blocks) - Number(a.blocks) ||
      b.minutes - a.minutes ||
      changeKinds.indexOf(a.kind) - changeKinds.indexOf(b.kind),
  );
}
