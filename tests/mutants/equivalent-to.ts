import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileOf } from './change-key.js';
import type { Change } from './chosen-changes.ts';
import type { Equivalent } from './equivalents/equivalent.ts';
import { equivalents } from './equivalents.ts';

const flat = (text: string) => text.replace(/\s+/g, ' ').trim();

const linesOf = (change: Change, root: string) =>
  readFileSync(join(root, fileOf(change)), 'utf8').split('\n');

/** What stood where the change was made. */
export function originalOf(change: Change, root: string): string {
  const { start, end } = change.location;
  const lines = linesOf(change, root).slice(start.line, end.line + 1);
  const ended = lines.map((line, k) => (k === lines.length - 1 ? line.slice(0, end.column) : line));
  return ended.map((line, k) => (k === 0 ? line.slice(start.column) : line)).join('\n');
}

/** The entry of the list by which a change changes nothing. */
export function equivalentTo(change: Change, root: string): Equivalent | undefined {
  const own = equivalents.filter(({ file }) => file === fileOf(change));
  if (own.length === 0) return undefined;
  const line = linesOf(change, root)[change.location.start.line]?.trim() ?? '';
  const original = flat(originalOf(change, root));
  return own.find(
    (one) =>
      line.startsWith(one.line) &&
      original.startsWith(flat(one.from)) &&
      flat(change.replacement ?? '') === one.to,
  );
}
