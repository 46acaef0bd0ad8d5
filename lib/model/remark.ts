import type { Level } from './finding.ts';
import type { Mark } from './trace.ts';

/**
 * What a computation noticed while it worked: a refused cut, two parts that overlap, a fuse that no lawful
 * rating fits. The rules turn it into a finding at its place.
 */
export interface Remark {
  /** The rule's id, such as `notch-wider-than-edge`. */
  readonly rule: string;
  readonly level: Level;
  /** Ids of what it is about, the subject first. */
  readonly of: readonly string[];
  /** In the words of the trade, with numbers. Built from ids and measures only. */
  readonly message: string;
  readonly value?: number | string;
  readonly limit?: number | string;
  readonly unit?: string;
  readonly source: string;
  readonly mark?: Mark;
  readonly remedy: string;
}

/** A remark with the place of its subject: a JSON Pointer into one of the files. */
export interface PlacedRemark {
  readonly remark: Remark;
  readonly path: string;
  /** The job's own file where left out. */
  readonly file?: 'job' | 'vehicle' | 'shop';
}
