import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { EmptyFolder } from '../shop-folder.ts';
import { inventedTry } from './invented-car.ts';
import { Typed } from './typed.ts';

const folder = new EmptyFolder();
afterAll(() => folder.remove());

/** Lines of commands and answers, each Enter counted. */
let typed = 0;

async function command(...line: readonly string[]) {
  typed += 1;
  return folder.run(...line);
}

describe('from an empty folder, with survey sheet and leaflets alone', () => {
  beforeAll(async () => {
    for (const { line, answers } of inventedTry) {
      const person = new Typed(...answers);
      const { status, told } = await folder.answered(person, ...line);
      expect([line, person.refused, status, person.count], told).toEqual([line, [], 0, answers.length]);
      typed += 1 + person.count;
    }
  });

  test('a five-channel job is without a stop, every terminal accounted for', async () => {
    const { status, out, told } = await command('check', 'coupe-five');
    expect([status, told], out).toEqual([0, '']);
    expect(out).toMatch(/coupe-five, revision A: draft; 0 stop/);
    expect(out).not.toContain('terminal-unaccounted');
  });

  test('what is told of terminals that stay open is written as it is told, and told no more', async () => {
    const { out } = await folder.run('check', 'coupe-five');
    const lines = [...out.matchAll(/under left-open: of the job why it stays open, such as (.*)$/gm)];
    expect(lines.length).toBeGreaterThan(0);
    const path = 'content/jobs/coupe-five.yaml';
    const before = folder.read(path);
    const open = lines.map(([, line = '']) => `  ${line}\n`).join('');
    folder.write(path, `${before}\nleft-open:\n${open}`);
    const after = await folder.run('check', 'coupe-five');
    expect([after.told, after.out.match(/open-only-by-proposal/g)]).toEqual(['', null]);
    folder.write(path, before);
  });

  test('and becomes a site with its sheets, within 130 lines', { timeout: 600_000 }, async () => {
    const { status, told } = await command('build');
    expect([status, told.match(/error/g)]).toEqual([0, null]);
    const page = readFileSync(join(folder.root, 'dist/jobs/coupe-five/index.html'), 'utf8');
    for (const words of [
      'Wire cut list',
      'Cut and drill',
      'Order of work',
      'Five channels under the left seat',
    ])
      expect(page).toContain(words);
    const survey = readFileSync(join(folder.root, 'dist/survey/index.html'), 'utf8');
    expect(survey).toContain('Ways for wires');
    expect(typed).toBeLessThanOrEqual(130);
  });
});
