import { hasFields } from '../../../../model/content/proposal.ts';
import type { KindName } from '../../../../model/kinds/index.ts';
import { rowNames } from '../../../../model/short-forms/row-names.ts';
import type { Answers } from '../../ask/question.ts';
import type { Cell } from '../../ask/rows.ts';
import type { Named } from '../../yaml-text.ts';
import { partRows } from '../part-rows.ts';
import { inputRange } from './knob-range.ts';

/**
 * Terminals of an amplifier, where inputs of which no voltage is told take what the gain of their channels reaches: a
 * leaflet prints the one or the other. What a row of terminals tells holds before it.
 */
export function withGainRanges(terminals: Named, kind: KindName, answers: Answers): Named {
  const ranges = kind === 'amplifier' ? gainRanges(answers) : [];
  if (ranges.length === 0) return terminals;
  return Object.fromEntries(
    Object.entries(terminals).map(([name, spec]) => {
      const isInput = hasFields(spec) && (spec.role === 'signal-in' || spec.role === 'speaker-in');
      if (!isInput || spec['signal-range'] !== undefined) return [name, spec];
      const names = wordsOf(name.replaceAll(',', ' '));
      const told = ranges.filter(({ inputs }) => names.some((one) => inputs.includes(one)));
      const [range, ...others] = new Set(told.map((one) => one.range));
      // Inputs of one row whose gains reach differently are none that this could tell of.
      return [name, range !== undefined && others.length === 0 ? { ...spec, 'signal-range': range } : spec];
    }),
  );
}

/** What each gain tells of the inputs that its channels play; of all inputs where it names no channel. */
function gainRanges(answers: Answers) {
  const channels = partRows('amplifier', 'channel', answers).flatMap(({ cells }) => {
    const [own = ''] = String(cells.inputs).split(/\s+or\s+/);
    const names = wordsOf(cells.names);
    const inputs = wordsOf(own);
    // A row of channels takes its inputs in turn; the channel of a line of its own may add several.
    return names.map((name, at) => ({
      name,
      inputs: names.length === 1 ? inputs : inputs.slice(at, at + 1),
    }));
  });
  return partRows('amplifier', 'control', answers).flatMap(({ cells }) => {
    const range = inputRange(cells);
    const own = cells.channels === undefined ? null : wordsOf(cells.channels);
    const inputs = channels.flatMap((one) => (own === null || own.includes(one.name) ? one.inputs : []));
    return range === null ? [] : [{ range, inputs }];
  });
}

/** The names in a cell, ranges among them opened out. */
function wordsOf(cell: Cell | undefined): readonly string[] {
  const words = String(cell ?? '').split(/\s+/);
  return words.flatMap((word) => {
    const names = rowNames(word);
    return word === '' || 'unreadable' in names ? [] : names;
  });
}
