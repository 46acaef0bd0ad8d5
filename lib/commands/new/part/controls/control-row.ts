import { filterTypeSchema } from '../../../../model/vocabulary.ts';
import { type Cell, hasUnknown, type Row } from '../../ask/rows.ts';
import { positionsFault, safeFault, slopeFault, slopeOf, whyFault } from './control-fields.ts';
import { knobRange, rangeFault } from './knob-range.ts';
import { levelSteps } from './level-steps.ts';

/** What is wrong with the row of a control, beside what its cells tell one by one. */
export function controlFault(cells: Row['cells'], line: string): string | null {
  const { what, sets } = cells;
  const fault =
    sets === undefined ? null : (levelFormFault(what, sets) ?? positionsFault(String(sets), what));
  if (fault !== null) return `from what to what ${fault}`;
  const lacks = rangeFault(cells) ?? safeFault(cells) ?? whyFault(cells);
  return lacks ?? (hasUnknown(line) ? null : slopeFault(cells));
}

/** A level in dB is a range or has steps: what is neither is told both forms. */
function levelFormFault(what: Cell | undefined, sets: Cell): string | null {
  const text = String(sets);
  const isLevel = what === 'level' && /dB/.test(text);
  return !isLevel || knobRange(text) || levelSteps(text)
    ? null
    : `has "${text}": write both ends of a knob, -12 dB to 0 dB or OFF to 0 dB, and the positions of a switch with a slash between, 0 / -3 / -6 dB`;
}

/** A filter of which nobody tells the shape protects nothing that a job could count on. */
export function shapeDoubt(slope: Cell | undefined): string | null {
  const told = slope === undefined ? {} : slopeOf(String(slope));
  if (told.order === undefined || told.type !== undefined) return null;
  return `tells no shape of the filter, and a job counts a filter that is told in part for none: write it before the slope, ${filterTypeSchema.options.join(' or ')}, such as ${filterTypeSchema.options[0]} ${String(slope)}`;
}
