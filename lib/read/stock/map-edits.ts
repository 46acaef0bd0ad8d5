import { pointer } from '../../model/place.ts';
import type { Edit } from '../yaml/splice.ts';
import type { YamlDocument } from '../yaml/yaml.ts';

/** A key and its value, as they are written. */
export type WrittenEntry = readonly [key: string, text: string];

/** The edits that put entries behind the last one of a map of a file; a map of the file itself that is not there is begun. */
export function entriesAdded(
  doc: YamlDocument,
  path: readonly string[],
  entries: readonly WrittenEntry[],
): readonly Edit[] {
  if (entries.length === 0) return [];
  const lines = entries.map(([key, text]) => `${key}: ${text}`);
  const span = doc.span(pointer([...path]));
  if (!span) {
    const gap = doc.source.endsWith('\n') ? '' : '\n';
    const text = `${gap}${path.join('.')}:\n${lines.map((line) => `  ${line}\n`).join('')}`;
    return [{ start: doc.source.length, end: doc.source.length, text }];
  }
  const written = doc.source.slice(span.start, span.end);
  if (written.startsWith('{')) {
    const last = written.slice(0, -1).trimEnd();
    const text = last === '{' ? ` ${lines.join(', ')} ` : `, ${lines.join(', ')}`;
    return [{ start: span.start + last.length, end: span.start + last.length, text }];
  }
  // Behind the last line with its comment, in the column of the others.
  const last = span.start + written.trimEnd().length;
  const breakAt = doc.source.slice(last).search(/\r?\n/);
  const end = breakAt < 0 ? doc.source.length : last + breakAt;
  const begin =
    doc.source
      .slice(0, span.start)
      .split(/\r\n|\r|\n/)
      .at(-1) ?? '';
  const indent = /^ *$/.test(begin) ? begin : '  '.repeat(path.length);
  return [{ start: end, end, text: lines.map((line) => `\n${indent}${line}`).join('') }];
}
