import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { clearStore, repairSite, swapSite } from '../../../../lib/publish/site/disk/swap-site.ts';
import { diskRename, patientRename, type RenameMeans } from '../../../../lib/publish/site/patient-rename.ts';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'swap-'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const places = () => ({ store: join(root, 'store'), site: join(root, 'site') });

/** A folder with one page. */
function folder(path: string, page: string): string {
  const full = join(root, path);
  mkdirSync(full, { recursive: true });
  writeFileSync(join(full, 'index.html'), page);
  return full;
}

const page = () => readFileSync(join(root, 'site/index.html'), 'utf8');

/** A disk that refuses to rename some paths, so many times, as Windows refuses what another program holds open. */
function holding(
  held: (from: string) => boolean,
  times: number,
  code = 'EBUSY',
): RenameMeans & { waits: number[] } {
  let left = times;
  const waits: number[] = [];
  return {
    waits,
    wait: async (ms) => waits.push(ms),
    rename: async (from, to) => {
      if (held(from) && left > 0) {
        left -= 1;
        throw Object.assign(new Error(`${code}: held`), { code });
      }
      await diskRename.rename(from, to);
    },
  };
}

describe('a rename', () => {
  it.each(['EBUSY', 'EPERM', 'EACCES'])('waits while another program holds the folder (%s)', async (code) => {
    const from = folder('from', 'here');
    const disk = holding((path) => path === from, 3, code);
    await patientRename(from, join(root, 'site'), disk);
    expect(page()).toBe('here');
    expect(disk.waits).toHaveLength(3);
  });

  it('gives up after a while, with what the system said', async () => {
    const from = folder('from', 'here');
    const disk = holding((path) => path === from, 1000);
    await expect(patientRename(from, join(root, 'site'), disk)).rejects.toThrow('EBUSY');
    expect(disk.waits.reduce((sum, ms) => sum + ms, 0)).toBeLessThanOrEqual(2000);
  });

  it('does not wait where waiting is of no use', async () => {
    const disk = holding(() => true, 1, 'ENOSPC');
    await expect(patientRename('a', 'b', disk)).rejects.toThrow('ENOSPC');
    expect(disk.waits).toEqual([]);
  });
});

describe('an exchange of sites', () => {
  it('puts the new site where none was, and where one stood', async () => {
    await swapSite(folder('store/building-1', 'one'), places());
    expect(page()).toBe('one');
    await swapSite(folder('store/building-2', 'two'), places());
    expect(page()).toBe('two');
    expect(readdirSync(join(root, 'store'))).toEqual([]);
  });

  it('leaves the last good site where the old one is held open for good', async () => {
    folder('site', 'good');
    const disk = holding((from) => from === join(root, 'site'), 1000);
    await expect(swapSite(folder('store/building-1', 'new'), places(), disk)).rejects.toThrow('EBUSY');
    expect(page()).toBe('good');
  });

  it('brings the last good site back where the new one can not be moved', async () => {
    folder('site', 'good');
    const built = folder('store/building-1', 'new');
    const disk = holding((from) => from === built, 1000);
    await expect(swapSite(built, places(), disk)).rejects.toThrow('EBUSY');
    expect(page()).toBe('good');
    expect(readdirSync(join(root, 'store'))).toEqual(['building-1']);
  });

  it('replaces a site that another build put there in between', async () => {
    folder('site', 'good');
    const built = folder('store/building-1', 'new');
    let others = 1;
    const disk: RenameMeans = {
      ...diskRename,
      rename: async (from, to) => {
        if (from === built && others > 0) {
          others -= 1;
          folder('site', 'of the other build');
        }
        await diskRename.rename(from, to);
      },
    };
    await swapSite(built, places(), disk);
    expect(page()).toBe('new');
    expect(readdirSync(join(root, 'store'))).toEqual([]);
  });
});

describe('what an interruption left', () => {
  it('between the two renames is put back', async () => {
    folder('store/replaced-building-1', 'good');
    await repairSite(places());
    expect(page()).toBe('good');
  });

  it('is not touched where the site stands', async () => {
    folder('site', 'good');
    folder('store/replaced-building-1', 'older');
    await repairSite(places());
    expect(page()).toBe('good');
  });

  it('is cleared away after a day, and not while another build may be at work', async () => {
    folder('store/building-1', 'half');
    folder('store/replaced-building-0', 'older');
    folder('store/site-0123456789ab', 'of an earlier version');
    folder('store/kept', 'not ours');
    await clearStore(places());
    expect(readdirSync(join(root, 'store')).sort()).toEqual(['building-1', 'kept', 'replaced-building-0']);
    await clearStore(places(), Date.now() + 2 * 86_400_000);
    expect(readdirSync(join(root, 'store'))).toEqual(['kept']);
    expect(existsSync(join(root, 'store/kept/index.html'))).toBe(true);
  });
});
