import {
  COLLECTION_STYLE,
  type DocumentEvent,
  EVENT_ID,
  type Event,
  type MappingEvent,
  type ScalarEvent,
  type SequenceEvent,
} from 'js-yaml';
import { pointer } from '../../model/place.ts';
import type { Unreadable } from '../../model/problem.ts';
import { subject } from '../schema/subject.ts';
import type { Scalar } from './core-scalar.ts';
import type { LineColumn, Position, Span } from './positions.ts';
import { scalarSpan, scalarValue, tagName } from './yaml-scalar.ts';

type Keys = readonly (string | number)[];

/** What is wrong at an offset of the source, and the JSON Pointer of the value that it concerns. */
export interface WalkFault {
  readonly offset: number;
  readonly path: string;
  readonly message: string;
}

/** What one pass over the events of a file yields. */
export interface Walked {
  /** The data of the first document; undefined where it holds nothing. */
  readonly data: unknown;
  readonly table: ReadonlyMap<string, Position>;
  readonly unread: ReadonlySet<string>;
  readonly faults: readonly WalkFault[];
}

interface Walk {
  readonly source: string;
  readonly events: readonly Event[];
  readonly at: (offset: number) => LineColumn;
  readonly table: Map<string, Position>;
  readonly unread: Set<string>;
  readonly faults: WalkFault[];
  /** Index of the next event. */
  next: number;
  /** The offset up to which the source is told by the events so far. */
  cursor: number;
}

/** Where the walk stands: a value that is not kept is read for its faults only. */
interface Spot {
  readonly keys: Keys;
  readonly key: Span | null;
  readonly kept: boolean;
}

interface Node {
  readonly value: unknown;
  readonly span: Span;
}

/** Walks the events of a source once, into plain data, the position of every value, and faults. */
export function walkEvents(
  source: string,
  events: readonly Event[],
  at: (offset: number) => LineColumn,
): Walked {
  const walk: Walk = {
    source,
    events,
    at,
    table: new Map(),
    unread: new Set(),
    faults: [],
    next: 0,
    cursor: 0,
  };
  const { table, unread, faults } = walk;
  const document = take(walk);
  if (document?.type !== EVENT_ID.DOCUMENT) return { data: undefined, table, unread, faults };
  refuseDirectives(walk, document);
  const root = readNode(walk, { keys: [], key: null, kept: true });
  refuseMore(walk);
  const empty = root.value === null && root.span.start === root.span.end;
  return { data: empty ? undefined : root.value, table, unread, faults };
}

function take(walk: Walk): Event | undefined {
  return walk.events[walk.next++];
}

function fault(walk: Walk, keys: Keys, offset: number, message: string): void {
  walk.faults.push({ offset, path: pointer(keys), message });
}

function refuseDirectives(walk: Walk, document: DocumentEvent): void {
  if (!document.directives.some((directive) => directive.kind === 'tag')) return;
  const offset = Math.max(0, walk.source.indexOf('%TAG'));
  fault(walk, [], offset, "a line that begins with %TAG can't be used: leave it out");
}

function refuseMore(walk: Walk): void {
  // The next event closes the first document.
  if (walk.next + 1 >= walk.events.length) return;
  const separator = /^---(?=\s|$)/m.exec(walk.source.slice(walk.cursor));
  const offset = walk.cursor + (separator?.index ?? 0);
  fault(walk, [], offset, 'a second document begins here: a file holds one, so leave out the line ---');
}

function readNode(walk: Walk, spot: Spot): Node {
  const node = nodeAt(walk, spot);
  if (spot.kept) walk.table.set(pointer(spot.keys), { key: spot.key, value: node.span });
  return node;
}

function nodeAt(walk: Walk, spot: Spot): Node {
  const event = take(walk);
  switch (event?.type) {
    case EVENT_ID.SCALAR:
      refuseAnchor(walk, spot, event);
      return readScalar(walk, spot, event);
    case EVENT_ID.MAPPING:
      refuseAnchor(walk, spot, event);
      refuseTag(walk, spot, event, 'map');
      return readMapping(walk, spot, event);
    case EVENT_ID.SEQUENCE:
      refuseAnchor(walk, spot, event);
      refuseTag(walk, spot, event, 'seq');
      return readSequence(walk, spot, event);
    case EVENT_ID.ALIAS: {
      const span = { start: event.anchorStart - 1, end: event.anchorEnd };
      walk.cursor = span.end;
      const message = `${subject(spot.keys)} is an alias (*name), which can't be used: write the value out`;
      return refused(walk, spot, span, message);
    }
    default:
      throw new Error(`An event of a value was expected, not of type ${event?.type}.`);
  }
}

function refused(walk: Walk, spot: Spot, span: Span, message: string): Node {
  fault(walk, spot.keys, span.start, message);
  if (spot.kept) walk.unread.add(pointer(spot.keys));
  return { value: null, span };
}

function refuseAnchor(walk: Walk, spot: Spot, event: { readonly anchorStart: number }): void {
  if (event.anchorStart < 0) return;
  const message = `${subject(spot.keys)} has an anchor (&name), which can't be used: leave it out`;
  fault(walk, spot.keys, event.anchorStart - 1, message);
}

function refuseTag(walk: Walk, spot: Spot, event: MappingEvent | SequenceEvent, own: 'map' | 'seq'): void {
  if (event.tagStart < 0) return;
  const tag = walk.source.slice(event.tagStart, event.tagEnd);
  if (tagName(tag) === own) return;
  const message = `${subject(spot.keys)} has the tag ${tag}, which can't be used: leave it out`;
  fault(walk, spot.keys, event.tagStart, message);
}

function readScalar(walk: Walk, spot: Spot, event: ScalarEvent): Node {
  const span = scalarSpan(walk.source, event) ?? emptySpan(walk, event, spot);
  walk.cursor = span.end;
  const value = scalarValue(walk.source, event);
  if (typeof value === 'object' && value !== null)
    return refused(walk, spot, span, `${subject(spot.keys)} ${value.unreadable}`);
  return { value, span };
}

/** Where a value would stand that is not written: behind its colon, or its hyphen in a list. */
function emptySpan(walk: Walk, event: ScalarEvent, spot: Spot): Span {
  const told = Math.max(walk.cursor, event.tagEnd, event.anchorEnd);
  const mark = typeof spot.keys.at(-1) === 'number' ? '-' : ':';
  const next = pastBlanks(walk.source, told);
  const start = walk.source[next] === mark ? next + 1 : told;
  return { start, end: start };
}

/** The offset of the next character that is neither white space nor in a comment. */
function pastBlanks(source: string, from: number): number {
  const blanks = /(?:\s+|(?<=^|\s)#[^\r\n]*)*/y;
  blanks.lastIndex = from;
  return from + (blanks.exec(source)?.[0].length ?? 0);
}

function readSequence(walk: Walk, spot: Spot, event: SequenceEvent): Node {
  walk.cursor = event.start;
  if (isBracketed(walk, event)) walk.cursor++;
  const value: unknown[] = [];
  while (walk.events[walk.next]?.type !== EVENT_ID.POP) {
    const keys = [...spot.keys, value.length];
    value.push(readNode(walk, { keys, key: null, kept: spot.kept }).value);
  }
  return { value, span: closeCollection(walk, event) };
}

function readMapping(walk: Walk, spot: Spot, event: MappingEvent): Node {
  walk.cursor = event.start;
  if (isBracketed(walk, event)) walk.cursor++;
  const value: Record<string, unknown> = Object.create(null);
  const seen = new Map<string, Span>();
  while (walk.events[walk.next]?.type !== EVENT_ID.POP) {
    const key = readKey(walk, spot, seen);
    const keys = key.name === null ? spot.keys : [...spot.keys, key.name];
    const kept = spot.kept && key.kept;
    const node = readNode(walk, { keys, key: key.span, kept });
    if (kept && key.name !== null) value[key.name] = node.value;
  }
  return { value, span: closeCollection(walk, event) };
}

interface Key {
  /** Null where the key is not even a scalar. */
  readonly name: string | null;
  readonly span: Span;
  readonly kept: boolean;
}

function readKey(walk: Walk, spot: Spot, seen: Map<string, Span>): Key {
  const event = walk.events[walk.next];
  if (event?.type !== EVENT_ID.SCALAR) return refusedKey(walk, spot);
  walk.next++;
  refuseAnchor(walk, spot, event);
  const span = scalarSpan(walk.source, event) ?? { start: walk.cursor, end: walk.cursor };
  walk.cursor = span.end;
  const value = scalarValue(walk.source, event);
  const name = typeof value === 'string' ? value : walk.source.slice(span.start, span.end);
  const wrong = keyFault(walk, name, value, seen.get(name));
  if (wrong) fault(walk, [...spot.keys, name], span.start, wrong);
  if (!seen.has(name)) seen.set(name, span);
  return { name, span, kept: wrong === null };
}

function refusedKey(walk: Walk, spot: Spot): Key {
  const before = walk.faults.length;
  const { span } = nodeAt(walk, { ...spot, kept: false });
  // What is wrong inside of it no longer matters.
  walk.faults.length = before;
  const message = "a list, a block or an alias can't be a name: write a plain one before the colon";
  fault(walk, spot.keys, span.start, message);
  return { name: null, span, kept: false };
}

function keyFault(
  walk: Walk,
  name: string,
  value: Scalar | Unreadable,
  first: Span | undefined,
): string | null {
  if (name === '') return 'a name is missing before the colon';
  if (typeof value === 'object' && value !== null) return `the name ${name} ${value.unreadable}`;
  if (typeof value !== 'string')
    return `the name ${name} is read as ${value === null ? 'nothing' : `a ${typeof value}`}: put quotes round it`;
  if (name === '__proto__') return "__proto__ can't be used as a name";
  if (first) return `${name} stands here twice: first in line ${walk.at(first.start).line}`;
  return null;
}

function isBracketed(walk: Walk, event: MappingEvent | SequenceEvent): boolean {
  return event.style === COLLECTION_STYLE.FLOW && /[[{]/.test(walk.source.charAt(event.start));
}

/** Takes the closing event of a list or block; its end is that of its last value, or its bracket. */
function closeCollection(walk: Walk, event: MappingEvent | SequenceEvent): Span {
  take(walk);
  if (isBracketed(walk, event)) {
    const bracket = event.type === EVENT_ID.SEQUENCE ? ']' : '}';
    let next = pastBlanks(walk.source, walk.cursor);
    while (next < walk.source.length && walk.source[next] !== bracket)
      next = pastBlanks(walk.source, next + 1);
    walk.cursor = Math.min(next + 1, walk.source.length);
  }
  return { start: event.start, end: Math.max(walk.cursor, event.start) };
}
