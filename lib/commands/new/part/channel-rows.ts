import { isRow, rowNames } from '../../../model/short-forms/row-names.ts';

/** Parts the cells of a row, but not the two halves of a number with a decimal comma. */
const between = /(?<!\d),|,(?!\d)/;

/**
 * The rows that a row of channels stands for. Where outputs are told by name, `1..4, FL FR RL RR, IN-A IN-B IN-C IN-D`,
 * each channel takes the one of its turn; a row of numbered ones stays one. As a text what is wrong: several channels
 * never share an output.
 */
export function channelRows(line: string): readonly string[] | string {
  const [names = '', outputs = '', inputs = '', ...others] = line.split(between).map((cell) => cell.trim());
  const channels = namesIn(names);
  const given = namesIn(outputs);
  if (typeof channels === 'string') return channels;
  if (typeof given === 'string') return given;
  if (outputs === '' || names === '') return [line];
  if (given.length !== channels.length)
    return `has ${told(channels, 'channel')} and ${told(given, 'output')}: each channel has one of its own; write as many outputs as channels`;
  const [own = '', inside] = inputs.split(/\s+or\s+/);
  const takes = namesIn(own);
  if (typeof takes === 'string') return takes;
  if (channels.length === 1) return [line];
  if (takes.length !== channels.length)
    return `has ${told(channels, 'channel')} and ${told(takes, 'input')}: write one for each in the same order, or a line for each channel where inputs are shared or added`;
  if (![names, outputs, own].some((cell) => /\s/.test(cell))) return [line];
  const behind = inside === undefined ? '' : ` or ${inside}`;
  return channels.map((name, at) => [name, given[at], `${takes[at] ?? ''}${behind}`, ...others].join(', '));
}

/** The names in a cell, with blanks between them or as ranges; what is wrong with a range as a text. */
function namesIn(cell: string): readonly string[] | string {
  const found: string[] = [];
  for (const word of cell.split(/\s+/)) {
    if (word === '') continue;
    const names = isRow(word) ? rowNames(word) : [word];
    if ('unreadable' in names) return `has "${word}", which ${names.unreadable}`;
    found.push(...names);
  }
  return found;
}

function told(names: readonly string[], what: string): string {
  return `${names.length} ${what}${names.length === 1 ? '' : 's'} (${names.join(', ')})`;
}
