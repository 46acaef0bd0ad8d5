import type { FindingIdIn } from '../model/findings/index.ts';
import type { Phrase } from '../model/phrase.ts';
import type { RemarkOf } from '../model/remark.ts';

export { commonPractice, geometry } from '../model/findings/source.ts';
export { length, phrase } from '../model/phrase.ts';

/** The ids of what can be wrong or doubtful about a board. */
export type BoardFindingId = FindingIdIn<'board' | 'layout' | 'mounting'>;

/**
 * What a computation noticed about a board. `of` holds ids of the cuts, items, wires, holes, fixings it is about;
 * lengths in its message and its remedy are not written yet.
 */
export type BoardRemark<Id extends BoardFindingId = BoardFindingId> = Id extends BoardFindingId
  ? BoardRemarkOf<Id>
  : never;

/** A remark under one id. */
export interface BoardRemarkOf<Id extends BoardFindingId>
  extends Omit<RemarkOf<Id>, 'message' | 'remedy' | 'value' | 'limit'> {
  readonly message: Phrase;
  readonly remedy: Phrase;
  /** The amount found, and what it is judged against, both in `unit`. */
  readonly value?: number;
  readonly limit?: number;
}
