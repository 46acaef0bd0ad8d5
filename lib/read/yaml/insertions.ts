import { hasFields, type WrittenValue } from '../../model/content/proposal.ts';
import { pointer } from '../../model/place.ts';
import { valueAt } from '../schema/schema-walk.ts';
import type { Edit } from './splice.ts';
import { blockLines, flowText, longestLine, scalarText, sectionLines } from './write-value.ts';
import type { YamlDocument } from './yaml.ts';

/** Named values that a file is to have beside those that it has. */
export type Additions = Readonly<Record<string, WrittenValue>>;

/**
 * The edits that write values into a document: what it does not have yet goes below the last line of the block that it
 * belongs to, or before the closing brace; a single value that it has is put in the place of the old one. Comments and
 * the order of what stands there are left alone. A new section goes behind the nearest one that comes before it in
 * `order`. Line ends are those of the document.
 */
export function insertions(doc: YamlDocument, values: Additions, order: readonly string[]): readonly Edit[] {
  const writing = new Writing(doc, order);
  writing.add([], values, order);
  return writing.edits();
}

class Writing {
  readonly #doc: YamlDocument;
  readonly #lineEnd: string;
  readonly #order: readonly string[];
  readonly #replaced: Edit[] = [];
  /** Texts by the offset that they go in at, what is deepest first. */
  readonly #inserted = new Map<number, string>();

  constructor(doc: YamlDocument, order: readonly string[]) {
    this.#doc = doc;
    this.#order = order;
    this.#lineEnd = doc.source.includes('\r\n') ? '\r\n' : '\n';
  }

  edits(): readonly Edit[] {
    const inserted = [...this.#inserted].map(([at, text]) => ({ start: at, end: at, text }));
    return [...this.#replaced, ...inserted];
  }

  /** Writes values below a path that the document has. */
  add(path: readonly string[], values: Additions, order: readonly string[] = []): void {
    const fresh: Record<string, WrittenValue> = {};
    for (const [key, value] of inOrder(values, order)) {
      const span = this.#doc.span(pointer([...path, key]));
      if (!span) fresh[key] = value;
      else if (hasFields(value) && hasFields(valueAt(this.#doc.data, [...path, key])))
        this.add([...path, key], value);
      else this.#replaced.push({ ...span, text: flowText(value) });
    }
    if (Object.keys(fresh).length === 0) return;
    if (path.length === 0) this.#addSections(fresh);
    else this.#addEntries(path, fresh);
  }

  #addSections(fresh: Additions): void {
    for (const [key, value] of Object.entries(fresh)) {
      const lines =
        hasFields(value) && Object.keys(value).length > 0
          ? [`${scalarText(key)}:`, ...sectionLines(value, '  ')]
          : blockLines(key, value, '');
      const before = this.#order
        .slice(0, Math.max(0, this.#order.indexOf(key)))
        .findLast((name) => this.#doc.span(pointer([name])) !== null);
      const at = before === undefined ? this.#bodyEnd() : this.#blockEnd([before], 1);
      this.#insert(at, ['', '', ...lines].join(this.#lineEnd));
    }
  }

  #addEntries(path: readonly string[], fresh: Additions): void {
    const span = this.#doc.span(pointer(path)) ?? { start: 0, end: 0 };
    if (this.#doc.source[span.start] === '{') {
      this.#addWithinBraces(path, span.start, fresh);
      return;
    }
    const column = span.start - this.#lineStart(span.start);
    const lines = sectionLines(fresh, ' '.repeat(column));
    this.#insert(this.#blockEnd(path, column), lines.map((line) => `${this.#lineEnd}${line}`).join(''));
  }

  /** Behind the last entry, so that a comment or a comma before the closing brace stays where it is. */
  #addWithinBraces(path: readonly string[], start: number, fresh: Additions): void {
    const names = Object.keys(valueAt(this.#doc.data, path) ?? {});
    const at = Math.max(start + 1, ...names.map((name) => this.#endOf([...path, name])));
    const entries = Object.entries(fresh).map(([key, value]) => `${scalarText(key)}: ${flowText(value)}`);
    const { source } = this.#doc;
    const line = source.slice(this.#lineStart(at)).split(/\r|\n/, 1)[0] ?? '';
    const isShort = line.length + entries.join(', ').length + 2 <= longestLine;
    const indent = /^ */.exec(source.slice(this.#lineStart(start)))?.[0] ?? '';
    const apart = isShort ? ' ' : `${this.#lineEnd}${indent}    `;
    const comma = names.length > 0 ? ',' : '';
    const end = names.length > 0 || /^\s/.test(source.slice(at)) ? '' : ' ';
    this.#insert(at, `${comma}${apart}${entries.join(`,${apart}`)}${end}`);
  }

  #insert(at: number, text: string): void {
    this.#inserted.set(at, `${this.#inserted.get(at) ?? ''}${text}`);
  }

  #endOf(path: readonly string[]): number {
    const span = this.#doc.span(pointer(path));
    return span ? span.start + this.#doc.source.slice(span.start, span.end).trimEnd().length : 0;
  }

  /** Behind the last line of a block: its comment too, and comments right below it that stand in its column or deeper. */
  #blockEnd(path: readonly string[], column: number): number {
    const { source } = this.#doc;
    const end = this.#endOf(path);
    const found = source.slice(end).search(/\r\n|\r|\n/);
    if (found < 0) return this.#bodyEnd();
    const comments = new RegExp(`(?:(?:\\r\\n|\\r|\\n) {${column},}#[^\\r\\n]*)*`, 'y');
    comments.lastIndex = end + found;
    return end + found + (comments.exec(source)?.[0].length ?? 0);
  }

  /** Behind the last line that says something. */
  #bodyEnd(): number {
    return this.#doc.source.trimEnd().length;
  }

  #lineStart(offset: number): number {
    return Math.max(...['\n', '\r'].map((end) => this.#doc.source.lastIndexOf(end, offset - 1))) + 1;
  }
}

function inOrder(values: Additions, order: readonly string[]): readonly [string, WrittenValue][] {
  const place = (key: string): number => (order.includes(key) ? order.indexOf(key) : order.length);
  return Object.entries(values).toSorted(([a], [b]) => place(a) - place(b));
}
