import { getScalarValue, SCALAR_STYLE, type ScalarEvent } from 'js-yaml';
import type { Unreadable } from '../../model/problem.ts';
import { coreScalar, type Scalar } from './core-scalar.ts';
import type { Span } from './positions.ts';

/** The name of a tag of the core schema, such as `str`; the text of the tag where it is another one. */
export function tagName(tag: string): string {
  return /^(?:!!|!<tag:yaml\.org,2002:)(str|int|float|bool|null|map|seq)>?$/.exec(tag)?.[1] ?? tag;
}

/** The value of a scalar event, or what is wrong with it. */
export function scalarValue(source: string, event: ScalarEvent): Scalar | Unreadable {
  const text = event.valueStart < 0 ? '' : getScalarValue(source, event);
  const tag = event.tagStart < 0 ? null : source.slice(event.tagStart, event.tagEnd);
  if (tag === null) return event.style === SCALAR_STYLE.PLAIN ? coreScalar(text) : text;
  const name = tagName(tag);
  if (name === 'str') return text;
  const accepts = tagged[name];
  if (!accepts) return { unreadable: `has the tag ${tag}, which can't be used: leave it out` };
  const value = coreScalar(text);
  return accepts(value) ? value : { unreadable: `has the tag ${tag}, but is something else` };
}

type Accepts = (value: Scalar | Unreadable) => boolean;
const tagged: Readonly<Partial<Record<string, Accepts>>> = {
  int: (value) => Number.isInteger(value),
  float: (value) => typeof value === 'number',
  bool: (value) => typeof value === 'boolean',
  null: (value) => value === null,
};

/** Where a scalar stands, with its quotes or its `|`; `null` where nothing is written. */
export function scalarSpan(source: string, event: ScalarEvent): Span | null {
  const { valueStart, valueEnd, style } = event;
  if (valueStart < 0) return null;
  if (style === SCALAR_STYLE.PLAIN) return { start: valueStart, end: valueEnd };
  if (style === SCALAR_STYLE.SINGLE_QUOTED || style === SCALAR_STYLE.DOUBLE_QUOTED)
    return { start: valueStart - 1, end: valueEnd + 1 };
  return blockSpan(source, valueStart, valueEnd);
}

function blockSpan(source: string, valueStart: number, valueEnd: number): Span {
  const header = /[^\r\n]*(?:\r\n|\r|\n)?$/.exec(source.slice(0, valueStart));
  const from = header?.index ?? valueStart;
  const indicator = /(?:^|[\s:])([|>][-+0-9]*)[ \t]*(?:[ \t]#.*)?\s*$/.exec(source.slice(from, valueStart));
  const start = indicator ? from + indicator.index + indicator[0].indexOf(indicator[1] ?? '') : valueStart;
  const text = source.slice(start, valueEnd).trimEnd();
  return { start, end: start + text.length };
}
