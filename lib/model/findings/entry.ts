import type { Level } from '../finding.ts';
import type { Source } from './source.ts';

/** What the catalogue says of one finding: what the rule or computation behind it asks, and where that comes from. */
export interface FindingEntry extends Source {
  /** What it asks, in one plain sentence; figures of house rules by their names, `{ground-lead}`. */
  readonly asks: string;
  /** The levels that it may have. */
  readonly levels: readonly [Level, ...Level[]];
  /** True where it rests on what devices draw, so that it says what of that was assumed. */
  readonly restsOnDraw?: true;
}
