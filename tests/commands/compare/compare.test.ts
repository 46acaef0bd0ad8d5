import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Ran, ShopFolder } from '../shop-folder.ts';

const job = 'content/jobs/demo.yaml';
let shop: ShopFolder;

/** Revision A is released, then B with a longer way to the amplifier; C is drawn, with another fuse. */
beforeAll(async () => {
  shop = new ShopFolder();
  expect((await shop.run('release', 'demo')).status).toBe(0);
  shop.change(job, 'revision: A', 'revision: B');
  shop.change(job, 'status: released', 'status: draft');
  shop.change(job, 'title: One amplifier', 'title: One amplifier and a sub');
  expect((await shop.run('release', 'demo')).status).toBe(0);
  shop.change(job, 'revision: B', 'revision: C');
  shop.change(job, 'status: released', 'status: draft');
  shop.change(job, 'holder-a, in: bay', 'holder-a, in: bay, fuse: 80 A');
});
afterAll(() => shop.remove());

describe('rackleaf compare', () => {
  test('tells of two revisions what changed, from their frozen plans alone', async () => {
    const { status, out } = await shop.run('compare', 'demo@A', 'demo@B');
    expect(status).toBe(0);
    expect(out).toMatch(/^before: demo, revision A \(superseded, issued /);
    expect(out).toMatch(/\nnow: demo, revision B \(released, issued /);
    expect(out).toContain('\nJob: 1 changed\n  C changed job: Title ');
  });

  test('tells of a job what differs from its last release, and of a revision from itself nothing', async () => {
    const alone = await shop.run('compare', 'demo');
    expect(alone.status).toBe(0);
    expect(alone.out).toMatch(
      /^before: demo, revision B, as released \(released.*\nnow: demo, revision C, as planned today \(draft/,
    );
    expect(alone.out).toMatch(/\nFuses: 1 changed\n {2}C changed main-fuse.*: Rating 60 A, now 80 A\n/);
    const same = await shop.run('compare', 'demo@B', 'demo@B');
    expect([same.status, same.out.split('\n').slice(2)]).toEqual([0, ['nothing differs']]);
  });

  test('takes a job as its sheets show it beside a revision of it', async () => {
    const { out } = await shop.run('compare', 'demo@B', 'demo');
    expect(out).toMatch(/\nnow: demo, revision C \(draft/);
    expect(out).toContain('Rating 60 A, now 80 A');
    const named = await shop.run('compare', 'demo@B', 'demo@C');
    expect(named.out).toBe(out);
  });

  test('gives the same to a program: values in SI, and each difference once', async () => {
    const { status, out } = await shop.run('compare', 'demo@B', 'demo', '--json');
    expect(status).toBe(0);
    const { before, after, tables, counts } = JSON.parse(out);
    expect([before.revision, after.revision, after.status]).toEqual(['B', 'C', 'draft']);
    const fuses = tables.find(({ id }: { id: string }) => id === 'fuses');
    expect(fuses.rows).toEqual([
      expect.objectContaining({
        state: 'changed',
        cells: [
          {
            column: 'rating',
            title: 'Rating',
            was: { text: '60 A', value: 60 },
            is: { text: '80 A', value: 80 },
          },
          expect.objectContaining({ column: 'part' }),
        ],
      }),
    ]);
    expect(counts.changed).toBeGreaterThan(0);
  });

  test('tells what a released job would be computed otherwise today, and leaves its release as it is', async () => {
    const released = new ShopFolder();
    await released.run('release', 'demo');
    released.change(job, 'holder-a, in: bay', 'holder-a, in: bay, fuse: 80 A');
    const { status, out } = await released.run('compare', 'demo');
    expect(status).toBe(0);
    expect(out).toMatch(/revision A, as released.*\nnow: demo, revision A, as planned today/);
    expect(out).toContain('Rating 60 A, now 80 A');
    released.remove();
  });

  test('writes a page of one file that asks for nothing, and holds no private value', async () => {
    const to = join(shop.root, 'out');
    const { status, told, out } = await shop.run('compare', 'demo@B', 'demo', '--to', to, '--json');
    expect(status).toBe(0);
    expect(readdirSync(to)).toEqual(['demo-B-to-demo-C.html']);
    expect(told).toContain('demo-B-to-demo-C.html');
    // Fonts hold any letters by chance.
    const html = shop.read('out/demo-B-to-demo-C.html').replace(/data:[\w/+-]+;base64,[\w+/=]+/g, 'data:');
    expect(html.includes('C changed') && html.includes('60 A')).toBe(true);
    expect(html.match(/ (?:src|href)="(?!data:|#)[^"]+/g)).toBeNull();
    expect(html.match(/ style="[^"]*/g)).toBeNull();
    expect(`${html}${out}`.match(/Specimen|555 0199|QZX/g)).toBeNull();
  });

  test.each<[readonly string[], string]>([
    [['ghost'], 'there is no job "ghost"'],
    [['demo@A', 'ghost'], 'there is no job "ghost"'],
    [['demo@Z', 'demo'], 'demo has no revision "Z"; known: A, B, C'],
    [['demo@', 'demo'], '"demo@" is neither JOB nor JOB@REV'],
    [['demo@A'], 'name what demo@A is compared with'],
    [[], 'needs A B?'],
    [['a', 'b', 'c'], 'does not know what to do with "c"'],
  ])('refuses %j by what is wrong with it', async (line, words) => {
    const { status, told, out }: Ran = await shop.run('compare', ...line);
    expect([status, out]).toEqual([2, '']);
    expect(told).toContain(words);
  });

  test('asks for another where a job was never released', async () => {
    const fresh = new ShopFolder();
    const { status, told } = await fresh.run('compare', 'demo');
    expect(status).toBe(2);
    expect(told).toContain('demo was not released yet: name another job or revision');
    fresh.remove();
  });
});
