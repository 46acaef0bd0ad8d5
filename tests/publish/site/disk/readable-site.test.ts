import { chmod, mkdir, mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildSite } from '../../../../lib/publish/site/build-site.ts';
import { letEveryoneThrough } from '../../../../lib/publish/site/disk/readable-site.ts';
import { casesOf } from '../../../long-run.ts';
import { samplePlan } from '../../sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../../sample/sample-site.ts';

let root = '';
let umask = 0;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'rackleaf-modes-'));
  umask = process.umask();
});
afterEach(async () => {
  process.umask(umask);
  await rm(root, { recursive: true, force: true });
});

/** What stands in a folder with another mode than a web server's user needs, the folder itself too. */
async function unreadable(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = ['.', ...entries.map((one) => join(one.parentPath, one.name).slice(folder.length + 1))];
  const modes = await Promise.all(
    paths.map(async (path) => {
      const found = await stat(join(folder, path));
      return { path, mode: found.mode & 0o777, wanted: found.isDirectory() ? 0o755 : 0o644 };
    }),
  );
  return modes.filter(({ mode, wanted }) => mode !== wanted).map(({ path }) => path);
}

// Windows knows no such modes.
describe.skipIf(process.platform === 'win32')('the files of a site', () => {
  const build = (title: string) => {
    const plan = samplePlan();
    const job = sampleJob({ ...plan, job: { ...plan.job, title } });
    return buildSite(sampleSite([job]), { root, drawingsOf: sampleDrawings });
  };

  it.each(casesOf([0o022, 0o077, 0o000], (mask) => mask === 0o077))(
    'can be read by everyone under the umask %o, after an exchange too',
    async (mask) => {
      process.umask(mask);
      for (const title of ['One', 'Two']) {
        const { folder } = await build(title);
        expect(await unreadable(folder)).toEqual([]);
      }
    },
  );

  it('can be read again where a site of the same bytes was closed', async () => {
    const { folder } = await build('One');
    await chmod(join(folder, 'index.html'), 0o600);
    await chmod(join(folder, 'assets'), 0o700);
    expect((await unreadable(folder)).toSorted()).toEqual(['assets', 'index.html']);
    await build('One');
    expect(await unreadable(folder)).toEqual([]);
  });

  it('can be come to, while what else lies on the way stays closed', async () => {
    process.umask(0o077);
    const site = join(root, 'store', 'inner', 'site');
    await mkdir(site, { recursive: true });
    await mkdir(join(root, 'store', 'private'));
    await letEveryoneThrough(root, site);
    const mode = async (path: string) => (await stat(join(root, path))).mode & 0o777;
    expect([await mode('store'), await mode('store/inner')]).toEqual([0o711, 0o711]);
    expect(await mode('store/private')).toBe(0o700);
  });
});
