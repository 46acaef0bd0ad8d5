import { filterTypeSchema } from '../../../model/vocabulary.ts';
import { type Cell, hasUnknown, type Row } from '../ask/rows.ts';
import { positionsFault, safeFault, slopeFault, slopeOf, whyFault } from './control-fields.ts';
import { rangeFault } from './knob-range.ts';

/** What is wrong with the row of a control, beside what its cells tell one by one. */
export function controlFault(cells: Row['cells'], line: string): string | null {
  const fault = cells.sets === undefined ? null : positionsFault(String(cells.sets));
  if (fault !== null) return `from what to what ${fault}`;
  const lacks = rangeFault(cells) ?? safeFault(cells) ?? whyFault(cells);
  return lacks ?? (hasUnknown(line) ? null : slopeFault(cells));
}

/** A filter of which nobody tells the shape protects nothing that a job could count on. */
export function shapeDoubt(slope: Cell | undefined): string | null {
  const told = slope === undefined ? {} : slopeOf(String(slope));
  if (told.order === undefined || told.type !== undefined) return null;
  return `tells no shape of the filter, and a job counts a filter that is told in part for none: write it before the slope, ${filterTypeSchema.options.join(' or ')}, such as ${filterTypeSchema.options[0]} ${String(slope)}`;
}
