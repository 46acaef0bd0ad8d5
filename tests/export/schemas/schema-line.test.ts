import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { schemaLine, schemaLineEdit } from '../../../lib/export/schemas/schema-line.ts';
import { splice } from '../../../lib/read/yaml/splice.ts';
import { root } from '../../plan/demo.ts';

const path = 'content/jobs/van.yaml';
const line = '# yaml-language-server: $schema=../../.rackleaf/schemas/jobs/van.json';

function named(text: string, at = path): string {
  const edit = schemaLineEdit({ path: at, text });
  const after = edit === null ? text : splice(text, [edit]);
  if (typeof after !== 'string') throw new Error(after.fault);
  return after;
}

describe('the line that names a schema', () => {
  test('leads from the file to it', () => {
    expect(schemaLine(path)).toBe(line);
    expect(schemaLine('content/shop.yaml')).toBe(
      '# yaml-language-server: $schema=../.rackleaf/schemas/shop.json',
    );
    expect(schemaLine('content/parts/wire.yaml')).toMatch(/\.\.\/\.\.\/\.rackleaf\/schemas\/parts\.json$/);
    expect(schemaLine('content/guides/gain.md')).toBeNull();
  });

  test('is put first, and nothing else is touched', () => {
    expect(named('rackleaf: 1\n# Mine.\nid: van\n')).toBe(`${line}\nrackleaf: 1\n# Mine.\nid: van\n`);
  });

  test('ends as the other lines do, and comes behind a mark of the encoding', () => {
    expect(named('rackleaf: 1\r\nid: van\r\n')).toBe(`${line}\r\nrackleaf: 1\r\nid: van\r\n`);
    expect(named('\ufeffrackleaf: 1\n')).toBe(`\ufeff${line}\nrackleaf: 1\n`);
  });

  test('is not written twice, wherever it stands among the first comments', () => {
    for (const text of [`${line}\nrackleaf: 1\n`, `# Van.\n\n${line}\nrackleaf: 1\n`])
      expect(schemaLineEdit({ path, text })).toBeNull();
  });

  test('is led to the file of today where the job was renamed', () => {
    const old = line.replace('van.json', 'bus.json');
    expect(named(`# Van.\n${old}\nrackleaf: 1\n`)).toBe(`# Van.\n${line}\nrackleaf: 1\n`);
    expect(named(`\ufeff${old}\r\nrackleaf: 1\r\n`)).toBe(`\ufeff${line}\r\nrackleaf: 1\r\n`);
  });

  test('leaves a schema of the writer alone', () => {
    for (const own of ['# yaml-language-server: $schema=../own.json', '# $schema: ../own.json'])
      expect(schemaLineEdit({ path, text: `${own}\nrackleaf: 1\n` })).toBeNull();
  });

  test('is no comment further down, and none in a file of another encoding', () => {
    expect(named(`rackleaf: 1\n${line}\n`)).toBe(`${line}\nrackleaf: 1\n${line}\n`);
    expect(schemaLineEdit({ path, text: 'r\0a\0c\0k\0' })).toBeNull();
  });
});

describe('every file of the demo shop, and of the shop that is begun from it', () => {
  const below = [root, join(root, 'layouts/starter')].flatMap((top) =>
    readdirSync(join(top, 'content'), { recursive: true, encoding: 'utf8' })
      .map((name) => ({ top, path: `content/${name.replaceAll('\\', '/')}` }))
      .filter(({ path: one }) => schemaLine(one) !== null),
  );

  test.each(below)('names its schema first: $path', ({ top, path: one }) => {
    expect(readFileSync(join(top, one), 'utf8').split('\n')[0]).toBe(schemaLine(one));
  });
});
