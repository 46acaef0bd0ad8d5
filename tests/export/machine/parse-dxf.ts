import { createRequire } from 'node:module';
import type { IDxf } from 'dxf-parser';

type ParserClass = new () => { parseSync(text: string): IDxf | null };

// The package says that it exports a namespace, but what it gives is the class itself.
const loaded: unknown = createRequire(import.meta.url)('dxf-parser');

function isParserClass(value: unknown): value is ParserClass {
  return typeof value === 'function';
}

/** Reads DXF by dxf-parser; throws where it can't. */
export function parseDxf(text: string): IDxf {
  if (!isParserClass(loaded)) throw new Error('dxf-parser gives no class');
  const read = new loaded().parseSync(text);
  if (!read) throw new Error('nothing was read');
  return read;
}
