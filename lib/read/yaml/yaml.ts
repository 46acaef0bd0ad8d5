import { parseEvents, YAMLException } from 'js-yaml';
import type { Problem, Read } from '../../model/problem.ts';
import { encodingFault } from '../encoding.ts';
import { lineFinder, type Position, type Positions, positions } from './positions.ts';
import { syntaxFault } from './yaml-syntax.ts';
import { walkEvents } from './yaml-walk.ts';

/** A YAML file as plain data, with the place of every value. */
export interface YamlDocument extends Positions {
  readonly file: string;
  readonly source: string;
  /** Blocks of named values are objects without a prototype; the rest is what JSON has. */
  readonly data: unknown;
  /** Where each value stands, by its JSON Pointer. */
  readonly table: ReadonlyMap<string, Position>;
  /** JSON Pointers of values that were refused and stand as null in the data: each has its problem. */
  readonly unread: ReadonlySet<string>;
  /** JSON Pointers of what was opened out of a row, each with the row as it is written; none until it is opened. */
  readonly rows: ReadonlyMap<string, string>;
}

/**
 * Reads one YAML document by the core schema of YAML 1.2. Refused, each with its place: aliases and anchors,
 * tags beyond the core ones, a second document, keys that are not texts, keys that stand twice (the first one
 * counts), numbers that are infinite or lose digits. All are collected; a fault of syntax ends the reading,
 * and the value is null.
 */
export function readYaml(file: string, source: string): Read<YamlDocument | null> {
  const at = lineFinder(source);
  const encoding = encodingFault(source);
  if (encoding) {
    const problem: Problem = { where: { file, ...at(encoding.offset), path: '' }, message: encoding.message };
    return { value: null, problems: [problem] };
  }
  const events = eventsOf(source);
  if ('unreadable' in events) {
    const problem: Problem = { where: { file, ...at(events.offset), path: '' }, message: events.unreadable };
    return { value: null, problems: [problem] };
  }
  const { data, table, unread, faults } = walkEvents(source, events.list, at);
  const problems = faults.map(({ offset, path, message }): Problem => {
    return { where: { file, ...at(offset), path }, message };
  });
  if (data === undefined) {
    const message = 'the file is empty: it begins with rackleaf: 1';
    return {
      value: null,
      problems: [...problems, { where: { file, line: 1, column: 1, path: '' }, message }],
    };
  }
  const rows = new Map<string, string>();
  return {
    value: { file, source, data, table, unread, rows, ...positions(file, table, at, rows) },
    problems,
  };
}

type Events = { readonly list: ReturnType<typeof parseEvents> } | { unreadable: string; offset: number };

function eventsOf(source: string): Events {
  try {
    return { list: parseEvents(source, {}) };
  } catch (error) {
    if (!(error instanceof YAMLException)) throw error;
    const offset = Math.min(error.mark?.position ?? 0, source.length);
    return { unreadable: syntaxFault(error.reason, source, offset), offset };
  }
}
