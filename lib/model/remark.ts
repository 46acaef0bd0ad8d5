import type { WrittenValue } from './content/proposal.ts';
import type { Level } from './finding.ts';
import type { FindingId, LevelOf } from './findings/index.ts';
import type { Mark } from './trace.ts';

/** Where the subject of a remark was written. */
export interface Whereabouts {
  /** A JSON Pointer into the file; in the files of parts, from `/parts`. */
  readonly path: string;
  /** Which file; the job's own where left out. */
  readonly file?: 'job' | 'vehicle' | 'shop' | 'part';
}

/** A value that a remedy says to write: where it stands, and as the file has it. */
export interface AdvisedValue extends Whereabouts {
  readonly value: WrittenValue;
}

/** Values that mend a finding once all of them are written. */
export type Advice = readonly AdvisedValue[];

/** What a remark has beside its id and its level. */
export interface RemarkBody {
  /** Ids of what it is about, the subject first. */
  readonly of: readonly string[];
  /** In the words of the trade, with numbers. Built from ids and measures only. */
  readonly message: string;
  readonly value?: number | string;
  readonly limit?: number | string;
  readonly unit?: string;
  /** Only where it is another than the catalogue's; its mark then stands beside it. */
  readonly source?: string;
  readonly mark?: Mark;
  readonly remedy: string;
  /**
   * Entries of the job, key by key from its top, that the remedy tells a line of: `links`, `feed`. What of them is only
   * proposed is not in the file yet, which is told with the remedy.
   */
  readonly writesAt?: readonly (readonly string[])[];
  /** Ways out of it as values to write, each enough by itself; the remedy tells them in words. */
  readonly advice?: readonly Advice[];
}

/** A remark under one id. */
export interface RemarkOf<Id extends FindingId> extends RemarkBody {
  /** Its id in the catalogue, such as `notch-wider-than-edge`. */
  readonly rule: Id;
  /** One of the levels that the catalogue lists for it. */
  readonly level: LevelOf<Id>;
}

/**
 * What a computation noticed while it worked: a refused cut, two parts that overlap, a fuse that no lawful
 * rating fits. The rules turn it into a finding at its place.
 */
export type Remark<Id extends FindingId = FindingId> = Id extends FindingId ? RemarkOf<Id> : never;

/** A remark whose level was checked against its id where it was made, or whose id and level come from two hands. */
export interface JoinedRemark extends RemarkBody {
  readonly rule: FindingId;
  readonly level: Level;
}

/** A remark with the place of its subject. */
export interface PlacedRemark extends Whereabouts {
  readonly remark: JoinedRemark;
}
