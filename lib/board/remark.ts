import type { FindingIdIn } from '../model/findings/index.ts';
import { printedMade } from '../model/printed/holes.ts';
import { printedLength } from '../model/printed/lengths.ts';
import type { Remark } from '../model/remark.ts';

export { commonPractice, geometry } from '../model/findings/source.ts';

/** The ids of what can be wrong or doubtful about a board. */
export type BoardFindingId = FindingIdIn<'board' | 'layout' | 'mounting'>;

/**
 * What a computation noticed about a board. `of` holds ids of the cuts, items, wires, holes, fixings it is about;
 * lengths in its message are in millimetres and inches.
 */
export type BoardRemark<Id extends BoardFindingId = BoardFindingId> = Remark<Id> & {
  /** The amount found, and what it is judged against, both in `unit`. */
  readonly value?: number;
  readonly limit?: number;
};

/** A length in millimetres to a tenth, with the nearest 1/32 in beside it: `19 mm (3/4 in)`, whichever was measured. */
export function mmText(lengthM: number): string {
  const mm = printedMade(lengthM);
  // Of a hair there is no fraction to tell.
  if (!(Math.abs(lengthM) >= 0.0004) || !Number.isFinite(lengthM)) return mm;
  return `${mm} (${printedLength('told', lengthM, { system: 'mm', fraction: 32 }).fraction})`;
}
