import { readFileSync } from 'node:fs';

/** The rows of a published table kept beside the tests: its comment lines tell where it comes from. */
export function publishedRows(file: string): readonly (readonly string[])[] {
  return readFileSync(new URL(file, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .slice(1)
    .map((line) => line.split(','));
}
