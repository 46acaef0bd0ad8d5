import { rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { misspelt, ShopFolder, stopped } from './shop-folder.ts';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder();
});
afterEach(() => shop.remove());

const folder = '.rackleaf/schemas';
const schema = (name: string): string => shop.read(`${folder}/${name}.json`);
const line = '# yaml-language-server: $schema=../../.rackleaf/schemas/jobs/demo.json';

describe('rackleaf check', () => {
  it('renews the schemas with the names of the shop', async () => {
    await shop.run('check');
    expect(schema('job')).toContain('"amp-a"');
    expect(schema('jobs/demo')).toContain('"amp.REM"');
    const loom = '{ kind: covering, title: Loom, form: loom, bore: 13 mm, withstands: 125 C }';
    shop.write('content/parts/more.yaml', `rackleaf: 1\nparts:\n  loom-b: ${loom}\n`);
    await shop.run('check');
    expect(schema('job')).toContain('"loom-b"');
  });

  it('writes them only where they change', async () => {
    await shop.run('check');
    const before = statSync(join(shop.root, folder, 'job.json')).ino;
    await shop.run('check');
    expect(statSync(join(shop.root, folder, 'job.json')).ino).toBe(before);
  });

  it('keeps the last schema of a job that is no YAML as it stands', async () => {
    await shop.run('check');
    const before = schema('jobs/demo');
    shop.write('content/jobs/demo.yaml', 'rackleaf: 1\n  id: [demo\n');
    await shop.run('check');
    expect(schema('jobs/demo')).toBe(before);
  });

  it('does its work where the schemas can not be written, and tells of it once', async () => {
    const usual = await shop.run('check');
    rmSync(join(shop.root, folder), { recursive: true });
    writeFileSync(join(shop.root, folder), 'in the way');
    const ran = await shop.run('check');
    expect(ran).toMatchObject({ status: usual.status, out: usual.out });
    expect(ran.told.match(/schemas for editors stay as they were/g)).toHaveLength(1);
  });

  it('prints one line for each finding and error with --plain, as compilers do', async () => {
    const own = new ShopFolder(stopped);
    try {
      const { out } = await own.run('check', '--plain');
      const lines = out.split('\n');
      const plain =
        /^content\/[^:]+:\d+:\d+: (?:error: stop|warning: caution|note: note)(?:, accepted)?: \S.*; to do: \S.* \[[a-z-]+\]$/;
      expect(lines.length).toBeGreaterThan(1);
      for (const one of lines) expect(one).toMatch(plain);
      expect(out).toMatch(/: error: stop: /);
    } finally {
      own.remove();
    }
  });

  it('prints what can not be read so, too', async () => {
    const own = new ShopFolder(misspelt);
    try {
      const { out, status } = await own.run('check', '--plain');
      expect(status).toBe(2);
      expect(out.split('\n')[0]).toMatch(/^content\/jobs\/demo\.yaml:\d+:\d+: error: .*amp.*RME.*; to do: /);
      expect((await own.run('check', '--plain', '--json')).status).toBe(2);
    } finally {
      own.remove();
    }
  });
});

describe('rackleaf schemas', () => {
  it('shows the lines first, and writes them where it may', async () => {
    const before = shop.read('content/jobs/demo.yaml');
    const shown = await shop.run('schemas');
    expect(shown).toMatchObject({ status: 0 });
    expect(shown.out).toContain(`content/jobs/demo.yaml:1:1: + ${line}`);
    expect(shop.read('content/jobs/demo.yaml')).toBe(before);
    await shop.run('schemas', '--yes');
    expect(shop.read('content/jobs/demo.yaml')).toBe(`${line}\n${before}`);
    const again = await shop.run('schemas', '--yes');
    expect(again.out).toBe('');
    expect((await shop.run('check')).status).not.toBe(2);
  });
});
