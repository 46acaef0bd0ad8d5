import { hasFields, type WrittenValue } from '../../model/content/proposal.ts';
import { coreScalar } from './core-scalar.ts';

/** A line of a block may be this long; what is longer goes on lines of its own. */
export const longestLine = 100;

/** What can stand without quotes anywhere, within braces too. */
const plain = /^[A-Za-z0-9][\w .+*|/()'-]*$/;

/** A text as YAML has it: plain where it is read back as the same text, else in quotes. */
export function scalarText(value: string | number | boolean | null): string {
  if (typeof value !== 'string') return String(value);
  const isPlain = plain.test(value) && !value.endsWith(' ') && coreScalar(value) === value;
  return isPlain ? value : JSON.stringify(value);
}

/** A value on one line: `{ from: dist.OUT1, to: amp.B+ }`. */
export function flowText(value: WrittenValue): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return scalarText(value);
  const entries = Object.entries(value).map(([key, one]) => `${scalarText(key)}: ${flowText(one)}`);
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}

/** A named value as lines of a block: on one line where it is short, else each of its own values on one. */
export function blockLines(key: string, value: WrittenValue, indent: string): readonly string[] {
  const line = `${indent}${scalarText(key)}: ${flowText(value)}`;
  if (!hasFields(value) || line.length <= longestLine || Object.keys(value).length === 0) return [line];
  return [`${indent}${scalarText(key)}:`, ...sectionLines(value, `${indent}  `)];
}

/** The named values of a block, each from a line of its own on. */
export function sectionLines(
  values: Readonly<Record<string, WrittenValue>>,
  indent: string,
): readonly string[] {
  return Object.entries(values).flatMap(([key, one]) => blockLines(key, one, indent));
}
