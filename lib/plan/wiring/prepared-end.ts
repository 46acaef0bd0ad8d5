import type { Part } from '../../model/kinds/index.ts';
import type { WireEnd } from '../../model/plan/index.ts';
import type { Remark } from '../../model/remark.ts';
import type { Traced } from '../../model/trace.ts';

/** A wire's end with the remarks that its preparation calls for. */
export interface PreparedEnd {
  readonly end: WireEnd;
  readonly remarks: readonly Remark[];
  /** How its lengths came about, by field. */
  readonly workings?: Readonly<Record<string, Traced<number>>>;
}

/** What a part of the shelf is crimped with, where its maker tells. */
export function dieOf(parts: Readonly<Record<string, Part>>, id: string | null): Pick<WireEnd, 'die'> {
  const part = id === null ? undefined : parts[id];
  return part?.kind === 'terminal' && part.die !== undefined ? { die: part.die } : {};
}
