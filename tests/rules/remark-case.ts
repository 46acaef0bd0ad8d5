import type { BoardRemark } from '../../lib/board/remark.ts';
import { type Fault, isFault } from '../../lib/model/fault.ts';
import type { Level } from '../../lib/model/finding.ts';
import { type FindingId, isFindingId } from '../../lib/model/findings/index.ts';
import type { JoinedRemark } from '../../lib/model/remark.ts';
import { PlanBook } from '../../lib/plan/plan-book.ts';
import { remarkFault } from '../../lib/plan/remark-fault.ts';
import { smallPlan } from '../plan/plan-small-shop.ts';
import type { Change } from '../read/small-shop.ts';
import { about } from './case.ts';

/** What a computation noticed, its lengths written or not yet. */
type Noticed = JoinedRemark | BoardRemark;

/** A case in which a computation must not remark: what it was given, and all that it noticed. */
export interface QuietRemark {
  readonly name: string;
  readonly remarks: () => readonly Noticed[];
}

/** A case in which it must: at this level, with this subject first. */
export interface FiringRemark extends QuietRemark {
  readonly level: Level;
  readonly subject: string;
  readonly says?: RegExp;
}

/** The cases of one remark. */
export interface CasesOfRemark {
  readonly fires: readonly FiringRemark[];
  readonly quiet: readonly QuietRemark[];
}

/** The cases of one family of remarks, by the id of what they find. */
export type RemarkCases = Readonly<Partial<Record<FindingId, CasesOfRemark>>>;

/** A firing case in one line: what is wrong, the level, the subject, and what the computation noticed. */
export const fires = (
  name: string,
  level: Level,
  subject: string,
  remarks: FiringRemark['remarks'],
  says?: RegExp,
): FiringRemark => ({ name, level, subject, remarks, ...(says && { says }) });

/** A quiet one. */
export const quiet = (name: string, remarks: QuietRemark['remarks']): QuietRemark => ({ name, remarks });

/** What planning the small shop's job notices, with changes made to its files. */
export const inSmallShop =
  (...changes: readonly Change[]) =>
  (): readonly JoinedRemark[] =>
    smallPlan(...changes).remarks;

let untouched: readonly JoinedRemark[] | undefined;
/** The small shop's job as it stands. */
export const asItStands: QuietRemark = quiet('the small shop as it stands', () => {
  untouched ??= inSmallShop()();
  return untouched;
});

type Refusal = Parameters<typeof remarkFault>[0];
const isRefusal = (fault: Fault): fault is Refusal => isFindingId(fault.fault);

/** What a computation of the audio side refuses, as it comes into the book. */
export const refused = (compute: () => unknown) => (): readonly JoinedRemark[] => {
  const book = new PlanBook();
  const result = compute();
  const [device] = about().job.devices;
  if (device && isFault(result)) {
    if (!isRefusal(result)) throw new Error(`The catalogue has no ${result.fault}.`);
    remarkFault(result, device, book);
  }
  return book.remarks().map(({ remark }) => remark);
};
