import type { SourceFile } from '../../model/content/source-file.ts';
import { encodingFault } from '../../read/encoding.ts';
import type { Edit } from '../../read/yaml/splice.ts';
import { schemaFolder, schemaOf } from './schema-files.ts';

/** What a comment begins with that names a schema; the YAML editors that are in use read the first of the two. */
const ours = '# yaml-language-server: $schema=';
const naming = /^#\s*(?:yaml-language-server\s*:\s*\$schema\s*=|\$schema\s*:)\s*(\S+)/;

/** The line that names the schema of a file, by the way from the file to it; null for a file that has none. */
export function schemaLine(path: string): string | null {
  const target = targetOf(path);
  return target === null ? null : `${ours}${target}`;
}

function targetOf(path: string): string | null {
  const schema = schemaOf(path);
  return schema === null ? null : `${'../'.repeat(path.split('/').length - 1)}${schema}`;
}

/**
 * What names the schema of a file in its first line, and leaves all else as it stands; null where it is named already,
 * where the writer names another one, and for a file that has none or is in no encoding that can be read.
 */
export function schemaLineEdit({ path, text }: SourceFile): Edit | null {
  const target = targetOf(path);
  if (target === null || encodingFault(text) !== null) return null;
  const named = namedIn(text);
  if (named === null) {
    const start = text.startsWith('\ufeff') ? 1 : 0;
    const lineEnd = /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
    return { start, end: start, text: `${ours}${target}${lineEnd}` };
  }
  const isOurs = named.text.includes(`${schemaFolder}/`);
  return isOurs && named.text !== target ? { ...named, text: target } : null;
}

/** The schema that the comments name before anything else stands in the file, and where it stands. */
function namedIn(source: string): Edit | null {
  for (const { index, 0: line } of source.matchAll(/[^\r\n]+/g)) {
    const text = line.replace(/^\ufeff/, '');
    const [head = '', named] = naming.exec(text) ?? [];
    const end = index + line.length - text.length + head.length;
    if (named !== undefined) return { start: end - named.length, end, text: named };
    if (!/^\s*(?:#|$)/.test(text)) return null;
  }
  return null;
}
