import { hasFields } from '../../../model/content/proposal.ts';
import type { KindName } from '../../../model/kinds/index.ts';
import { powerAt, voltageOfPower } from '../../../model/survey/power-into-load.ts';
import { type Answers, linesOf } from '../ask/question.ts';
import type { Cell, Row } from '../ask/rows.ts';
import { blockText, filled, known, type Named } from '../yaml-text.ts';
import { boxFields } from './box-fields.ts';
import { crossoverTerminals, partsOfSet } from './component-set.ts';
import { controlsOf } from './controls/control-fields.ts';
import { withGainRanges } from './controls/gain-ranges.ts';
import { holeFields, slotRemark } from './hole-fields.ts';
import { leftOut } from './left-out.ts';
import { factsTaken, joinedBy, sizeRange, upTo } from './part-columns.ts';
import { isAsked, partRows } from './part-rows.ts';
import { partTables } from './part-tables.ts';
import { partTitle, titleWithin } from './part-title.ts';
import { passedOn } from './passed-fields.ts';
import { rowName } from './row-name.ts';
import { speakerFields } from './speaker-fields.ts';
import { edgeAirOf, pitchTitle } from './terminal-tables.ts';

/** The text of a file with one part, from what its leaflet told, and what that may still tell. */
export function partText(kind: KindName, id: string, answers: Answers): string {
  const told = partTables[kind].map(({ key }) => fieldsOf(kind, key, answers));
  const terminals = Object.assign(ofItsWays(kind, answers), ...told.map((fields) => fields.terminals ?? {}));
  const [facts] = partRows(kind, 'facts', answers);
  const title = partTitle(kind, answers);
  const part = Object.assign(
    { kind, title },
    ...told,
    hasCase(kind)
      ? { terminals: withGainRanges(facts ? withSpeakerLevel(terminals, facts) : terminals, kind, answers) }
      : {},
  );
  const derived = derivedFrom(kind, answers);
  const left = leftOut(kind, answers);
  return [
    'rackleaf: 1\n',
    ...derived.map((one) => `# ${one}\n`),
    ...(left.length === 0 ? [] : ['# The leaflet may still tell:\n', ...left.map((one) => `#   ${one}\n`)]),
    blockText(
      { parts: { [id]: part, ...besideWoofer(kind, { id, title: titleWithin(kind, answers) }, answers) } },
      4,
    ),
  ].join('');
}

/** Terminals of a crossover of which none are told; nothing for another part. */
function ofItsWays(kind: KindName, answers: Answers): Named {
  const ways = partRows(kind, 'band', answers).map(({ cells }) => rowName(cells.names));
  const isTold = linesOf(answers, 'terminal').length > 0;
  return isTold || ways.length === 0 ? {} : crossoverTerminals(ways, { input: {}, output: {} });
}

/** Tweeter and crossover of a set; nothing for another part. */
function besideWoofer(
  kind: KindName,
  woofer: { readonly id: string; readonly title: string },
  answers: Answers,
): Named {
  const [told] = isAsked('set', answers) ? partRows(kind, 'set', answers) : [];
  const [facts] = partRows(kind, 'facts', answers);
  if (!told || !facts) return {};
  const { power, nominal } = facts.cells;
  return partsOfSet(told, {
    ...woofer,
    fields: known({ power }),
    nominal: String(nominal),
  });
}

/** What of the file the leaflet does not say in these words: how it follows from what it says. */
function derivedFrom(kind: KindName, answers: Answers): readonly string[] {
  const slots = partRows(kind, 'case', answers).flatMap((row) => slotRemark(row) ?? []);
  return [...slots, ...terminalsDerived(kind, answers)];
}

function terminalsDerived(kind: KindName, answers: Answers): readonly string[] {
  if (kind === 'source-unit') return [];
  if (Object.keys(ofItsWays(kind, answers)).length > 0)
    return [
      'terminals: IN, and a pair for each of its ways. Write them as they are printed where that differs.',
    ];
  return partRows(kind, 'terminal', answers).flatMap(({ cells: { names, takes } }) => {
    const volts = takes === undefined ? null : voltageOfPower(String(takes));
    return volts === null ? [] : [`signal: of ${names}: ${takes} is ${volts} across it, by Ohm's law.`];
  });
}

function hasCase(kind: KindName): boolean {
  return partTables[kind].some(({ key }) => key === 'case');
}

/** The fields of a part that one table tells, as its file has them. */
export function fieldsOf(kind: KindName, key: string, answers: Answers): Named {
  const rows = partRows(kind, key, answers);
  const [first] = rows;
  const written = writers[key];
  if (!first) return {};
  return written ? written(rows, kind) : { ...first.cells };
}

type Writer = (rows: readonly Row[], kind: KindName) => Named;

/** How each table is written; one that is not listed here has its columns for fields. */
const writers: Readonly<Record<string, Writer>> = {
  case: ([row]) => {
    if (!row) return {};
    const { width, depth, height, mass, foot } = row.cells;
    return {
      ...filled('size', known({ width, depth, height })),
      ...known({ mass, foot }),
      ...holeFields(row),
    };
  },
  cooling: ([row]) => (row ? coolingFields(row) : {}),
  terminal: (rows, kind) => ({
    terminals: byName(rows, (row) => terminalFields(row, kind)),
    ...(kind === 'source-unit' && filled('outputs', ratedOutputs(rows))),
  }),
  // The parts of a set stand beside the woofer.
  set: () => ({}),
  filter: ([row]) => filled('filter', { ...row?.cells }),
  menu: menuFields,
  posts: ([row], kind) => ({ terminals: row ? posts(row, kind) : {} }),
  facts: ([row], kind) => {
    if (kind === 'speaker') return row ? speakerFields(row) : {};
    if (kind === 'enclosure') return row ? boxFields(row) : {};
    const { 'speaker-level': _, senses: __, ...cells } = row?.cells ?? {};
    // The speaker level stands at the terminals of the inputs, which are told before it.
    return kind === 'amplifier' ? cells : { ...row?.cells };
  },
  channel: (rows) => ({ channels: byName(rows, channelFields) }),
  bridge: (rows) => ({
    bridges: Object.fromEntries(
      rows.map(({ cells: { name, ...cells }, rest }) => [String(name), { ...cells, powers: powers(rest) }]),
    ),
  }),
  pass: (rows) => filled('passes', passedOn(rows)),
  control: (rows) => ({ controls: controlsOf(rows) }),
  supply: ([row]) => filled('supply', row ? supplyFields(row) : {}),
  sizes: ([row]) => ({ takes: sizeRange(String(row?.cells.takes)) }),
  box: ([row]) => (row ? boxes(row) : {}),
  way: (rows) => ({ 'fused-ways': byName(rows, ({ cells: { names: _, ...cells } }) => cells) }),
  band: (rows) => ({
    ways: Object.fromEntries(rows.map(({ cells: { names, band } }) => [rowName(names), band ?? ''])),
  }),
  conductor: (rows) => ({
    conductors: Object.fromEntries(rows.map(({ cells: { name, ...cells } }) => [String(name), cells])),
  }),
  input: ([row]) => {
    const { 'starts-by': startsBy, ...cells } = row?.cells ?? {};
    return { ...known({ 'starts-by': startsBy }), input: cells };
  },
  output: ([row]) => ({ output: { ...row?.cells } }),
};

function coolingFields({ cells: { over, ...edges } }: Row): Named {
  const told = Object.entries(edges).map(([edge, cell]) => [edge, edgeAirOf(String(cell))] as const);
  const cooling = told.flatMap(([edge, [, by]]) => (by === undefined ? [] : [[edge, by] as const]));
  const air = told.flatMap(([edge, [, , made]]) => (made === undefined ? [] : [[edge, made] as const]));
  return {
    ...filled('cooling', Object.fromEntries(cooling)),
    ...filled('air', { ...Object.fromEntries(air), ...(over !== undefined && { face: over }) }),
  };
}

/**
 * Filters of a menu. One row tells those of all outputs, or of the outputs that it names; of several, those that name outputs
 * tell what is there in place of the rest.
 */
function menuFields(rows: readonly Row[]): Named {
  const isSeveral = rows.length > 1;
  const own = rows.filter(({ cells }) => !isSeveral || cells['filter-outputs'] === undefined);
  const beside = rows.filter((row) => !own.includes(row));
  const at = beside.map(({ cells }) => {
    const { 'filter-outputs': outputs, 'filter-orders': orders, 'filter-types': types } = cells;
    const { from, to } = cells;
    const range = from !== undefined && to !== undefined ? { from, to } : undefined;
    const names = Array.isArray(outputs) ? outputs.map(String).join(' ') : outputs;
    return [rowName(names), known({ orders, types, range })] as const;
  });
  const others = beside.map(({ cells: { 'sample-rate': rate, summing } }) =>
    known({ 'sample-rate': rate, summing }),
  );
  return Object.assign({}, ...others, ...own.map(menuRow), filled('filters-at', Object.fromEntries(at)));
}

/** Corners are one range. */
function menuRow({ cells: { from, to, ...cells } }: Row): Named {
  return { ...cells, ...(from !== undefined && to !== undefined && { 'filter-range': { from, to } }) };
}

function supplyFields({ cells: { full, eighth, ...cells } }: Row): Named {
  const efficiency = { ...(full !== undefined && { full }), ...(eighth !== undefined && { eighth }) };
  return { ...cells, ...filled('efficiency', efficiency) };
}

function byName(rows: readonly Row[], fields: (row: Row) => Named): Named {
  return Object.fromEntries(rows.map((row) => [rowName(row.cells.names), fields(row)]));
}

function terminalFields({ cells: { names: _, takes, ...told }, open }: Row, kind: KindName): Named {
  const isRated = kind === 'source-unit' && voltageOfPower(String(takes)) !== null;
  // Without the distance from each to the next the place of the first tells of none of the others.
  const { at: __, ...unplaced } = told;
  const cells = open.includes(pitchTitle) ? unplaced : told;
  return { ...cells, ...(takes === undefined || isRated ? {} : taken(String(takes), cells.joint)) };
}

/** Every line input with the speaker level that it takes by its maker's lead. */
function withSpeakerLevel(terminals: Named, { cells: { 'speaker-level': to, senses } }: Row): Named {
  if (to === undefined) return terminals;
  const level = known({ to, senses });
  return Object.fromEntries(
    Object.entries(terminals).map(([name, spec]) => {
      const isInput = hasFields(spec) && spec.role === 'signal-in';
      return [name, isInput ? { ...spec, 'speaker-level': level } : spec];
    }),
  );
}

/** Outputs of a source unit that its leaflet rates in power: the clean voltage follows where it is planned. */
function ratedOutputs(rows: readonly Row[]): Named {
  return Object.fromEntries(
    rows.flatMap(({ cells: { names, takes } }) => {
      const rated = takes === undefined ? {} : powers([String(takes)]);
      return Object.keys(rated).length === 0 ? [] : [[rowName(names), { powers: rated }] as const];
    }),
  );
}

/** A voltage is that of a signal: a range is what an input takes, a single one what an output gives; so is a power into a load. */
function taken(takes: string, joint?: Cell): Named {
  const given = voltageOfPower(takes);
  if (given !== null) return { signal: given };
  const { conductor, signal, current } = factsTaken(takes);
  return {
    ...(current !== undefined && { current }),
    ...(conductor !== undefined && joinedBy(joint, conductor)),
    ...(signal !== undefined && signalTaken(signal)),
  };
}

function signalTaken(signal: string): Named {
  const most = upTo(signal);
  if (most !== null) return { 'signal-range': { to: most } };
  return / to /.test(signal) ? { 'signal-range': signal } : { signal };
}

/** The case of an alternator is bolted to the engine. */
function posts({ cells: { names, ...told } }: Row, kind: KindName): Named {
  const [first = '', second = ''] = String(names).split(/\s+/);
  const cells: Row['cells'] = {
    ...told,
    ...(told.takes !== undefined && { takes: sizeRange(String(told.takes)) }),
  };
  const role = kind === 'fuse-holder' ? ['feed-in', 'feed-out'] : ['source-positive', 'source-negative'];
  const { joint: _, ...bolted } = cells;
  const other = kind === 'alternator' ? { joint: 'body-bolt', ...bolted } : cells;
  return {
    [first]: { role: role[0] ?? '', ...cells },
    [second]: { role: role[1] ?? '', ...other },
  };
}

function channelFields({ cells: { outputs, inputs, minimum }, rest }: Row): Named {
  const [own = '', inside] = String(inputs).split(/\s+or\s+/);
  const [input = '', ...summed] = own.split(/\s+/);
  return {
    output: String(outputs),
    input,
    ...(summed.length > 0 && { summed }),
    ...(inside !== undefined && { 'also-takes': inside.split(/\s+/) }),
    ...(minimum !== undefined && { minimum }),
    powers: powers(rest),
  };
}

function powers(rest: readonly string[]): Named {
  return Object.fromEntries(
    rest.flatMap((one) => {
      const told = powerAt(one);
      return told === null ? [] : [told];
    }),
  );
}

function boxes({ cells: { loading, from, to } }: Row): Named {
  if (loading === undefined || from === undefined || to === undefined) return {};
  return { boxes: { [String(loading)]: { from, to } } };
}
