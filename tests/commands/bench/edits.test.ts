import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type EditName, editShop } from '../../../lib/commands/bench/edits.ts';
import { computedFrom } from '../../../lib/plan/planned.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { fixedRoot } from '../../boards/fixed-jobs.ts';

const job = 'van-three-amps';
const folder = mkdtempSync(join(tmpdir(), 'edits-'));
afterAll(() => rmSync(folder, { recursive: true }));
await cp(join(fixedRoot, 'content'), join(folder, 'content'), { recursive: true });

/** The shop as it stands now, read. */
function readNow() {
  const files = readdirSync(join(folder, 'content'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.yaml'))
    .map((path) => ({
      path: `content/${path}`,
      text: readFileSync(join(folder, 'content', path), 'utf8'),
    }));
  return readContent(files);
}

/** What a plan of the job is made from. */
function jobNow() {
  const { problems, jobs } = readNow();
  expect(problems).toEqual([]);
  const found = jobs.find(({ id }) => id === job);
  if (!found) throw new Error(`${job} can not be read`);
  return { title: found.file.title, ...computedFrom(found) };
}

describe('an edit that is measured', () => {
  it.each<[EditName]>([['title'], ['length'], ['filter'], ['gain'], ['name'], ['colour']])(
    'of a %s changes the job, its board excepted, and leaves it readable',
    async (name) => {
      const before = jobNow();
      expect(await editShop(folder, job, name)).toBe(true);
      const after = jobNow();
      expect(after).not.toEqual(before);
      expect(after.boards).toEqual(before.boards);
    },
  );

  it('is none where there is nothing of the kind', async () => {
    writeFileSync(join(folder, 'content/jobs/bare.yaml'), 'rackleaf: 1\nid: bare\n');
    expect(await editShop(folder, 'bare', 'colour')).toBe(false);
  });
});
