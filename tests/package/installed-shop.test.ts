import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { digestOf, filesBelow } from '../../lib/publish/site/site-digest.ts';
import { root } from '../architecture/modules.ts';
import { EmptyFolder } from '../commands/shop-folder.ts';
import { diskFaults } from './any-disk.ts';
import { npm, run, type Said } from './npm.ts';
import { serveIn } from './served.ts';

/* The package as a shop has it: packed, installed by a plain npm into a folder that knows nothing of this one. */

// A name as people give to folders: with blanks, and letters that not every program expects.
const outside = mkdtempSync(join(tmpdir(), 'Zoë’s shop & Söhne '));
const shop = join(outside, 'shop 1');
const tool = join(shop, 'node_modules', 'rackleaf');
const fromSources = new EmptyFolder();
let tarball = '';

beforeAll(async () => {
  await npm(root, 'pack', '--pack-destination', outside);
  tarball = join(outside, 'rackleaf-0.1.0.tgz');
  mkdirSync(shop);
  await npm(shop, 'install', '--prefer-offline', '--no-audit', '--no-fund', tarball);
}, 900_000);
afterAll(() => {
  rmSync(outside, { recursive: true, force: true });
  fromSources.remove();
});

/** The command as it was installed; npm's own script for it is tried apart. */
function rackleaf(...words: readonly string[]): Promise<Said> {
  return run(shop, process.execPath, join(tool, '.dist', 'cli.js'), ...words);
}

describe('the package in a shop of its own', () => {
  test('brings no test and no source, and neither a compiler nor a loader of TypeScript', async () => {
    const files = await filesBelow(tool);
    expect(files.filter((path) => /(?<!\.d)\.ts$|\.test\.|^tests/.test(path))).toEqual([]);
    for (const name of ['tsx', 'typescript', 'vitest', 'esbuild', 'rolldown'])
      expect(existsSync(join(shop, 'node_modules', name)), name).toBe(false);
  });

  test('is found by npm under its name, and tells of itself', async () => {
    const said = await npm(shop, 'exec', '--offline', '--', 'rackleaf', '--help');
    expect(said).toMatch(/^Rackleaf: install build sheets/);
    expect(said).toContain('rackleaf new --shop');
  });

  test('makes a shop, in a folder that had nothing but the package', async () => {
    expect((await rackleaf('check')).told).toMatch(/rackleaf new --shop makes one in an empty folder/);
    const { status, told } = await rackleaf('new', '--shop', '--title', 'Zoë & Söhne');
    expect([status, told]).toEqual([0, expect.stringContaining('a shop to begin with')]);
  });

  test('begins a job, and tells what is still to be done in it', async () => {
    expect((await rackleaf('new', 'next-job', '--issued-on', '2026-02-09')).status).toBe(0);
    const { status, out, told } = await rackleaf('check', 'next-job');
    expect([status, told]).toEqual([1, '']);
    expect(out).toMatch(/content\/jobs\/next-job\.yaml:\d+:\d+: stop: /);
    rmSync(join(shop, 'content/jobs/next-job.yaml'));
  });

  test('builds the site that the sources build, byte for byte', async () => {
    const { status, told } = await rackleaf('build');
    expect(told).toMatch(/first-job, revision A: draft; 0 stop/);
    expect(status).toBe(0);
    const page = readFileSync(join(shop, 'dist/jobs/first-job/index.html'), 'utf8');
    expect(page).toContain('Zoë &amp; Söhne');
    expect(page.match(/<svg/g)?.length).toBeGreaterThan(5);
    expect(existsSync(join(shop, 'dist/pagefind/pagefind.js'))).toBe(true);
    // Bundled as the package was compiled: here is no bundler.
    expect(readFileSync(join(shop, 'dist/calculators/one-file/index.html'), 'utf8')).toContain(
      readFileSync(join(tool, '.dist/calculators.js'), 'utf8').slice(0, 2000),
    );
    expect(diskFaults(await filesBelow(join(shop, 'dist')))).toEqual([]);
    await fromSources.run('new', '--shop', '--title', 'Zoë & Söhne');
    await fromSources.run('build');
    expect(await digestOf(join(shop, 'dist'))).toEqual(await digestOf(join(fromSources.root, 'dist')));
  }, 600_000);

  test('gives its files to other programs, and writes nothing into its own folder', async () => {
    const before = await digestOf(tool);
    const words = ['export', 'first-job', '--format', 'dxf', '--format', 'csv', '--to', 'for the router'];
    const { status, out } = await rackleaf(...words);
    expect(status).toBe(0);
    const files = await filesBelow(join(shop, 'for the router'));
    expect(
      out
        .trim()
        .split('\n')
        .map((path) => basename(path))
        .sort(),
    ).toEqual([...files].sort());
    expect(files.some((name) => name.endsWith('.dxf'))).toBe(true);
    expect(await digestOf(tool)).toEqual(before);
  }, 300_000);

  test('serves the site to a browser on this machine', async () => {
    const { status, end } = await serveIn(shop, [join(tool, '.dist', 'cli.js')]);
    for (const path of ['', 'guides/', 'jobs/first-job/', 'assets/styles.css', 'assets/search.js']) {
      expect(await status(path), path).toBe(200);
    }
    // Windows knows no interruption from outside: there the process is ended.
    expect(await end()).toBe(process.platform === 'win32' ? null : 0);
  }, 300_000);

  test('is a library too, whose types stand by themselves', async () => {
    writeFileSync(join(shop, 'ask.mts'), program);
    const options = [
      '--module',
      'nodenext',
      '--target',
      'es2023',
      '--strict',
      '--types',
      '',
      '--skipLibCheck',
      'false',
    ];
    const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
    const { status, out } = await run(shop, process.execPath, tsc, ...options, 'ask.mts');
    expect([status, out]).toEqual([0, '']);
    const asked = await run(shop, process.execPath, 'ask.mjs');
    expect(asked.told).toBe('');
    const { fuse, drawings } = JSON.parse(asked.out);
    const plan = JSON.parse((await rackleaf('plan', 'first-job', '--json')).out);
    expect(fuse).toBe(plan.power.fuses[0].ratingA);
    expect(drawings).toBeGreaterThan(5);
  }, 300_000);

  test('carries its sources in its maps, so that a fault of ours is found by its line', async () => {
    const map = JSON.parse(readFileSync(join(tool, '.dist/plan/plan-job.js.map'), 'utf8'));
    expect(map.sourcesContent).toEqual([readFileSync(join(root, 'lib/plan/plan-job.ts'), 'utf8')]);
  });

  test('in a later version leaves everything that is the shop’s as it was', async () => {
    const later = join(outside, 'later');
    mkdirSync(later);
    const manifest = join(tool, 'package.json');
    writeFileSync(
      manifest,
      readFileSync(manifest, 'utf8').replace('"version": "0.1.0"', '"version": "0.1.1"'),
    );
    await npm(shop, 'pack', '--pack-destination', later, './node_modules/rackleaf', '--ignore-scripts');
    writeFileSync(
      join(shop, 'content/guides/own.md'),
      '---\ntitle: Own\nsummary: Ours.\n---\nAs we do it.\n',
    );
    const before = [await digestOf(join(shop, 'content')), await digestOf(join(shop, 'dist'))];
    await npm(
      shop,
      'install',
      '--prefer-offline',
      '--no-audit',
      '--no-fund',
      join(later, 'rackleaf-0.1.1.tgz'),
    );
    expect(readFileSync(manifest, 'utf8')).toContain('"version": "0.1.1"');
    expect([await digestOf(join(shop, 'content')), await digestOf(join(shop, 'dist'))]).toEqual(before);
  }, 300_000);
});

/** A program of the shop's own: it reads, plans and draws. */
const program = `import { type BuildPlan, drawJob, judgedPlan, readContent, shippedMetrics, type SourceFile } from 'rackleaf';

declare const process: { stdout: { write(text: string): void } };
// @ts-expect-error There are no types of Node here.
import { readdirSync, readFileSync } from 'node:fs';

const names: string[] = readdirSync('content', { recursive: true });
const files: SourceFile[] = names
  .filter((name) => name.endsWith('.yaml') || name.endsWith('.md'))
  .map((name) => ({ path: 'content/' + name.split('\\\\').join('/'), text: readFileSync('content/' + name, 'utf8') }));
const job = readContent(files).jobs.find(({ id }) => id === 'first-job');
if (!job) throw new Error('There is no job.');
const plan: BuildPlan = judgedPlan(job);
const drawings: number = drawJob(plan, shippedMetrics()).length;
process.stdout.write(JSON.stringify({ fuse: plan.power.fuses[0]?.ratingA, drawings }));
`;
