import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { rowsOf } from '../../../lib/commands/bench/against.ts';
import { openCommit, repositoryOf } from '../../../lib/commands/bench/other-commit.ts';
import { goalText } from '../../../lib/commands/bench/timing.ts';
import { runMeasured } from '../../../lib/commands/bench/user-time.ts';
import { readAgainst } from '../../../lib/commands/bench-against.ts';
import { exitStatus } from '../../../lib/commands/exit-status.ts';
import { ShopFolder } from '../shop-folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'repository-'));
afterAll(() => rmSync(folder, { recursive: true }));

function git(...line: readonly string[]): string {
  const author = ['-c', 'user.name=A', '-c', 'user.email=a@b.example'];
  return execFileSync('git', [...author, ...line], { cwd: folder, encoding: 'utf8' }).trim();
}

describe('rows of a measurement', () => {
  const then = { 'start-check': 1, 'start-plan': 1, check: 11, draw: 4 };

  it('leave the start of a process out of both, with what each loads', () => {
    const rows = rowsOf(then, { 'start-check': 2, 'start-plan': 3, check: 8 });
    expect(rows.find(({ id }) => id === 'check')).toMatchObject({ thenS: 10, nowS: 5, ratio: 0.5 });
  });

  it('hold what is done again against the other commit from cold', () => {
    const rows = rowsOf(then, { 'start-check': 1, 'check-again': 1.5 });
    expect(rows.find(({ id }) => id === 'check-again')).toMatchObject({ thenS: 10, nowS: 0.5, ratio: 0.05 });
  });

  it('say of each goal whether it is met, both sides of it', () => {
    const goalOf = (seconds: number) =>
      rowsOf(then, { 'start-check': 1, 'check-again': 1 + seconds }).find(({ id }) => id === 'check-again')
        ?.goal;
    expect(goalOf(0.5)).toEqual({ says: 'at most 0.05', met: true });
    expect(goalOf(0.51)).toEqual({ says: 'at most 0.05', met: false });
    expect(goalText(goalOf(0.51))).toBe('at most 0.05: not met');
    expect(goalText(undefined)).toBe('');
  });

  it('show no time below none', () => {
    const rows = rowsOf(then, { 'start-check': 1, 'check-again': 0.9 });
    expect(rows.find(({ id }) => id === 'check-again')).toMatchObject({ nowS: 0, ratio: 0 });
  });

  it('are none for what was not measured of both', () => {
    expect(rowsOf(then, { draw: 1, board: 3 }).map(({ id }) => id)).toEqual(['draw']);
  });
});

describe('another commit', () => {
  git('init', '--quiet');
  writeFileSync(join(folder, 'a.txt'), 'first');
  git('add', '.');
  git('commit', '--quiet', '--message', 'first');
  writeFileSync(join(folder, 'a.txt'), 'second');
  git('add', '.');

  it('is put beside, with the repository as it was', async () => {
    const before = git('status', '--porcelain');
    const opened = await openCommit(folder, 'HEAD');
    if (!opened) throw new Error('there is no HEAD');
    expect(readFileSync(join(opened.folder, 'a.txt'), 'utf8')).toBe('first');
    expect(readFileSync(join(folder, 'a.txt'), 'utf8')).toBe('second');
    expect(git('status', '--porcelain')).toBe(before);
    expect(opened.commit).toBe(git('rev-parse', 'HEAD'));
    await opened.remove();
    expect(existsSync(opened.folder)).toBe(false);
  });

  it('is none where the repository has none of that name', async () => {
    expect(await openCommit(folder, 'no-such-branch')).toBeNull();
    expect(await openCommit(folder, '--all')).toBeNull();
  });

  it('needs a repository', async () => {
    expect(await repositoryOf(tmpdir())).toBeNull();
  });
});

describe('a measured run', () => {
  it('tells how it ended, what it gave out and the time of its threads', async () => {
    const script = join(folder, 'work.ts');
    writeFileSync(script, 'console.log("out"); console.error("told"); process.exit(3 satisfies number);');
    const run = await runMeasured(script, [], folder);
    expect(run).toMatchObject({ status: 3, out: 'out\n', told: 'told\n' });
    expect(run.userS).toBeGreaterThan(0);
  });
});

describe('choices', () => {
  it('are all parts in three rounds where none are named', () => {
    expect(readAgainst('HEAD', [], null, null)).toMatchObject({
      rounds: 3,
      parts: ['help', 'check', 'build', 'draw', 'board'],
    });
  });

  it.each([
    [['--part', 'paint'], '--part takes help, check, build, draw, board'],
    [['--rounds', '0'], '--rounds takes a whole number from 1'],
    [['--rounds', 'many'], '--rounds takes a whole number from 1'],
  ])('%j are refused', async (words, message) => {
    const shop = new ShopFolder();
    const { status, told } = await shop.run('bench', '--against', 'HEAD', ...words);
    shop.remove();
    expect(status).toBe(exitStatus.inputErrors);
    expect(told).toContain(message);
  });
});
