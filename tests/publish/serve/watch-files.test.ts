import { mkdir, mkdtemp, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FileLooks, type Look } from '../../../lib/publish/serve/file-looks.ts';
import { type FileWatch, watchFiles } from '../../../lib/publish/serve/watch-files.ts';
import { saveWhole } from './whole-save.ts';

let root = '';
let watching: FileWatch | null = null;
const saves: Look[] = [];
const writing: (readonly string[])[] = [];

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'rackleaf-watch-'));
  await mkdir(join(root, 'content/jobs'), { recursive: true });
  await writeFile(join(root, 'content/jobs/a.yaml'), 'title: One\n');
  saves.length = 0;
  writing.length = 0;
});
afterEach(async () => {
  watching?.end();
  watching = null;
  await rm(root, { recursive: true, force: true });
});

const texts = (look: Look | undefined) =>
  Object.fromEntries(look?.files.map(({ path, text }) => [path, text]) ?? []);

async function watch(): Promise<void> {
  watching = await watchFiles({
    root,
    folders: ['content'],
    onSave: (look) => saves.push(look),
    onWriting: (paths) => writing.push(paths),
    everyMs: 100,
  });
}

const lastTexts = () => expect.poll(() => texts(saves.at(-1)));

describe('a look through the folders', () => {
  it('gives what each text holds, and of other files the digest alone', async () => {
    await writeFile(join(root, 'content/jobs/photo.jpg'), Uint8Array.of(0xff, 0xd8));
    const { files } = await new FileLooks(root, ['content']).look();
    expect(files.map(({ path, text, fault }) => [path, text, fault])).toEqual([
      ['content/jobs/a.yaml', 'title: One\n', null],
      ['content/jobs/photo.jpg', null, null],
    ]);
  });

  it('sees a change that leaves size and times as they were', async () => {
    const path = join(root, 'content/jobs/a.yaml');
    const long = new Date('2020-01-01T00:00:00Z');
    await utimes(path, long, long);
    const looks = new FileLooks(root, ['content']);
    const before = await looks.look();
    await writeFile(path, 'title: Two\n');
    await utimes(path, long, long);
    const { size, mtimeMs } = await stat(path);
    expect([size, mtimeMs]).toEqual(['title: One\n'.length, long.getTime()]);
    expect(texts(await looks.look())).toEqual({ 'content/jobs/a.yaml': 'title: Two\n' });
    expect(texts(before)).toEqual({ 'content/jobs/a.yaml': 'title: One\n' });
  });

  it('names the line from which on a file is no text', async () => {
    const half = [...new TextEncoder().encode('title: One\nnote: caf'), 0xc3];
    await writeFile(join(root, 'content/jobs/a.yaml'), Uint8Array.from(half));
    const [file] = (await new FileLooks(root, ['content']).look()).files;
    expect(file?.text).toBeNull();
    expect(file?.fault?.line).toBe(2);
  });

  it('tells a folder that is not there from an empty one', async () => {
    await mkdir(join(root, 'empty'));
    const { files, missing } = await new FileLooks(root, ['empty', 'nowhere']).look();
    expect({ files, missing }).toEqual({ files: [], missing: ['nowhere'] });
  });
});

describe('watchFiles', () => {
  it('tells of a save, of a rename and of a removal', async () => {
    await watch();
    expect(texts(watching?.first)).toEqual({ 'content/jobs/a.yaml': 'title: One\n' });
    await writeFile(join(root, 'content/jobs/a.yaml'), 'title: Two\n');
    await lastTexts().toEqual({ 'content/jobs/a.yaml': 'title: Two\n' });
    await rename(join(root, 'content/jobs/a.yaml'), join(root, 'content/jobs/b.yaml'));
    await lastTexts().toEqual({ 'content/jobs/b.yaml': 'title: Two\n' });
    await rm(join(root, 'content/jobs/b.yaml'));
    await lastTexts().toEqual({});
  });

  it('says nothing where a file is written with what it held', async () => {
    await watch();
    await saveWhole(join(root, 'content/jobs/a.yaml'), 'title: One\n');
    await saveWhole(join(root, 'content/jobs/b.yaml'), 'title: Two\n');
    await lastTexts().toHaveProperty(['content/jobs/b.yaml']);
    expect(saves).toHaveLength(1);
  });

  it('tells of a folder that vanishes, and of what stands there once it is back', async () => {
    await watch();
    await rename(join(root, 'content'), join(root, 'away'));
    await expect.poll(() => saves.at(-1)?.missing).toEqual(['content']);
    await rename(join(root, 'away'), join(root, 'content'));
    await lastTexts().toEqual({ 'content/jobs/a.yaml': 'title: One\n' });
    await writeFile(join(root, 'content/jobs/a.yaml'), 'title: Three\n');
    await lastTexts().toEqual({ 'content/jobs/a.yaml': 'title: Three\n' });
  });

  it('waits for a file that is still being written, and says which', async () => {
    await watch();
    const path = join(root, 'content/jobs/a.yaml');
    let text = '';
    // Written on until two looks have met with different lines, however long these take.
    for (let line = 1; writing.flat().length === 0; line += 1) {
      text += `line-${line}: written\n`;
      await writeFile(path, text);
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    await lastTexts().toEqual({ 'content/jobs/a.yaml': text });
    expect(writing.flat()).toContain('content/jobs/a.yaml');
    expect(writing.at(-1)).toEqual([]);
  });
});
