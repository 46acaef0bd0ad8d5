import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Look, SeenFile } from '../../../lib/publish/serve/file-looks.ts';
import { PromisingFiles } from '../../../lib/publish/serve/promising-files.ts';

const seen = (path: string, text: string | null): SeenFile => {
  return { path, text, digest: createHash('sha256').update(`${text}`).digest('hex'), fault: null };
};
const job = (id: string, head: string) => seen(`content/jobs/${id}.yaml`, `rackleaf: 1\nid: ${id}\n${head}`);
const frozen = (id: string, revision: string) => seen(`content/jobs/${id}/${revision}.plan.json`, null);
const look = (...files: readonly SeenFile[]): Look => ({ files, missing: [] });
const pathsFor = (id: string, ...files: readonly SeenFile[]) =>
  new PromisingFiles()
    .in(look(...files))(id)
    .map(({ path }) => path);

describe('the files by which other jobs take from the shelf', () => {
  const drawn = job('drawn', 'status: draft\n');

  test('are the frozen plan of each that is not built in, and how far it is', () => {
    expect(pathsFor('drawn', drawn, job('one', 'status: released\n'), frozen('one', 'A'))).toEqual([
      'content/jobs/one.standing.json',
      'content/jobs/one/A.plan.json',
    ]);
    expect(pathsFor('drawn', drawn, job('one', 'status: installed\n'), frozen('one', 'A'))).toEqual([]);
    expect(pathsFor('drawn', drawn, frozen('gone', 'A'))).toEqual([]);
  });

  test('are those of the last revision, and of one that is built in before it', () => {
    const files = [frozen('one', 'B'), frozen('one', 'A')];
    const on = (installed: string) =>
      job(
        'one',
        `revision: B\nstatus: released\nrevisions:\n  - { revision: A, date: 2026-02-09, what: x${installed} }\n  - { revision: B, date: 2026-03-09, what: y }\n`,
      );
    expect(pathsFor('drawn', drawn, on(''), ...files).slice(1)).toEqual(['content/jobs/one/B.plan.json']);
    expect(pathsFor('drawn', drawn, on(', installed: 2026-02-20'), ...files).slice(1)).toEqual([
      'content/jobs/one/B.plan.json',
      'content/jobs/one/A.plan.json',
    ]);
  });

  test('are none of the job itself, and none of a revision that is shown as it was frozen', () => {
    const one = [job('one', 'status: released\n'), frozen('one', 'A')];
    const two = [job('two', 'status: released\n'), frozen('two', 'A')];
    expect(pathsFor('one', ...one, ...two)).toEqual([]);
    const next = [job('one', 'revision: B\nstatus: draft\n'), frozen('one', 'A')];
    expect(pathsFor('one', ...next, ...two)).toEqual([
      'content/jobs/two.standing.json',
      'content/jobs/two/A.plan.json',
    ]);
  });

  test('are the same after an edit that says nothing of how far a job is', () => {
    const files = new PromisingFiles();
    const digests = (text: string) =>
      files
        .in(look(drawn, job('one', text), frozen('one', 'A')))('drawn')
        .map(({ digest }) => digest);
    expect(digests('status: released\ntitle: One\n')).toEqual(digests('status: released\ntitle: Two\n'));
    expect(digests('status: released\n')).not.toEqual(digests('status: draft\n'));
  });
});
