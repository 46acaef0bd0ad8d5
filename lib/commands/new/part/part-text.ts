import type { KindName } from '../../../model/kinds/index.ts';
import { type Answers, linesOf } from '../ask/question.ts';
import { type Cell, type Row, rowOf } from '../ask/rows.ts';
import { blockText, type Named } from '../yaml-text.ts';
import { controlsOf } from './control-fields.ts';
import { powerAt } from './part-columns.ts';
import { partTables } from './part-tables.ts';

/** The text of a file with one part, from what its leaflet told. */
export function partText(kind: KindName, id: string, answers: Answers): string {
  const told = partTables[kind].map(({ key }) => fieldsOf(kind, key, answers));
  const terminals = Object.assign({}, ...told.map((fields) => fields.terminals ?? {}));
  const part = Object.assign({ kind }, ...told, hasCase(kind) ? { terminals } : {});
  return `rackleaf: 1\n${blockText({ parts: { [id]: part } }, 4)}`;
}

function hasCase(kind: KindName): boolean {
  return partTables[kind].some(({ key }) => key === 'case');
}

/** The fields of a part that one table tells, as its file has them. */
export function fieldsOf(kind: KindName, key: string, answers: Answers): Named {
  const table = partTables[kind].find((one) => one.key === key);
  const rows = table ? linesOf(answers, key).map((line) => rowOf(table.columns, line)) : [];
  const [first] = rows;
  const written = writers[key];
  if (!first) return {};
  return written ? written(rows, kind) : { ...first.cells };
}

type Writer = (rows: readonly Row[], kind: KindName) => Named;

/** How each table is written; one that is not listed here has its columns for fields. */
const writers: Readonly<Record<string, Writer>> = {
  case: ([row]) => {
    const { mass = '', ...size } = row?.cells ?? {};
    return { size, mass };
  },
  holes: ([row]) => ({ 'mounting-holes': { ...row?.cells } }),
  cooling: ([row]) => ({ cooling: { ...row?.cells } }),
  terminal: (rows) => ({ terminals: byName(rows, terminalFields) }),
  posts: ([row], kind) => ({ terminals: row ? posts(row, kind) : {} }),
  channel: (rows) => ({ channels: byName(rows, channelFields) }),
  bridge: (rows) => ({
    bridges: Object.fromEntries(
      rows.map(({ cells: { name, ...cells }, rest }) => [String(name), { ...cells, powers: powers(rest) }]),
    ),
  }),
  control: (rows) => ({ controls: controlsOf(rows) }),
  supply: ([row]) => ({ supply: { ...row?.cells } }),
  coil: ([row]) => (row ? coils(row) : {}),
  box: ([row]) => (row ? boxes(row) : {}),
  way: (rows) => ({ 'fused-ways': byName(rows, ({ cells: { names: _, ...cells } }) => cells) }),
  conductor: (rows) => ({
    conductors: Object.fromEntries(rows.map(({ cells: { name, ...cells } }) => [String(name), cells])),
  }),
  input: ([row]) => ({ input: { ...row?.cells } }),
  output: ([row]) => ({ output: { ...row?.cells } }),
};

/** `B+ GND` is written as a row of names, `B+, GND`. */
function rowName(names: Cell | undefined): string {
  return String(names).split(/\s+/).join(', ');
}

function byName(rows: readonly Row[], fields: (row: Row) => Named): Named {
  return Object.fromEntries(rows.map((row) => [rowName(row.cells.names), fields(row)]));
}

function terminalFields({ cells: { names: _, takes, ...cells } }: Row): Named {
  return { ...cells, ...(takes === undefined ? {} : taken(String(takes))) };
}

/** A voltage is that of a signal: a range is what an input takes, a single one what an output gives. */
function taken(takes: string): Named {
  if (!/V$/.test(takes.trim())) return { takes };
  return / to /.test(takes) ? { 'signal-range': takes } : { signal: takes };
}

/** The case of an alternator is bolted to the engine. */
function posts({ cells: { names, ...cells } }: Row, kind: KindName): Named {
  const [first = '', second = ''] = String(names).split(/\s+/);
  const role = kind === 'fuse-holder' ? ['feed-in', 'feed-out'] : ['source-positive', 'source-negative'];
  const { joint: _, ...bolted } = cells;
  const other = kind === 'alternator' ? { joint: 'body-bolt', ...bolted } : cells;
  return {
    [first]: { role: role[0] ?? '', ...cells },
    [second]: { role: role[1] ?? '', ...other },
  };
}

function channelFields({ cells: { outputs, inputs, minimum = '' }, rest }: Row): Named {
  const [input = '', ...summed] = String(inputs).split(/\s+/);
  return {
    output: String(outputs),
    input,
    ...(summed.length > 0 && { summed }),
    minimum,
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

function coils({ cells: { names, joint, takes, ...cells } }: Row): Named {
  return {
    terminals: {
      [rowName(names)]: {
        role: 'coil',
        ...(joint !== undefined && { joint }),
        ...(takes !== undefined && { takes }),
      },
    },
    coils: { [rowName(names)]: cells },
  };
}

function boxes({ cells: { loading, from, to } }: Row): Named {
  if (loading === undefined || from === undefined || to === undefined) return {};
  return { boxes: { [String(loading)]: { from, to } } };
}
