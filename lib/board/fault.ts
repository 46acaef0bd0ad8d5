import type { Level } from '../model/finding.ts';
import { formatLength } from '../model/length-text.ts';
import type { Mark } from '../model/trace.ts';

/** What is wrong or doubtful about a board: a value that the rules turn into a finding. */
export interface BoardFault {
  /** The rule's id, such as `notch-wider-than-edge`. */
  readonly rule: string;
  readonly level: Level;
  /** Ids of the cuts, items, wires, holes, fixings it is about, the subject first. */
  readonly of: readonly string[];
  /** In the words of the trade, with numbers; lengths in millimetres and inches. */
  readonly message: string;
  /** The amount found, and what it is judged against, both in `unit`. */
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: string;
  readonly source: string;
  readonly mark?: Mark;
  readonly remedy: string;
}

/** The source line of a rule that is common practice. */
export const commonPractice = { source: 'common practice, no source', mark: 'cp' } as const;

/** The source line of a rule that is plain geometry. */
export const geometry = { source: 'geometry of the board as written' } as const;

/** A length in millimetres to a tenth, with the nearest 1/32 in beside it: `19 mm (3/4 in)`, whichever was measured. */
export function mmText(lengthM: number): string {
  const mm = `${(Math.round(lengthM * 1e4) / 10).toString()} mm`;
  // Of a hair there is no fraction to tell.
  if (!(Math.abs(lengthM) >= 0.0004) || !Number.isFinite(lengthM)) return mm;
  return `${mm} (${formatLength(lengthM, { system: 'mm', fraction: 32 }).fraction})`;
}
