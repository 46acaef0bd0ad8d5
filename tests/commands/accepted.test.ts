import { afterAll, describe, expect, test } from 'vitest';
import { findingText } from '../../lib/commands/told/report.ts';
import type { Finding } from '../../lib/model/finding.ts';
import { ShopFolder, stopped } from './shop-folder.ts';

const folders: ShopFolder[] = [];
afterAll(() => {
  for (const folder of folders) folder.remove();
});

function shop(...accepted: readonly string[]): ShopFolder {
  const folder = new ShopFolder();
  folders.push(folder);
  const list = accepted.map((one) => `  - ${one}\n`).join('');
  if (list !== '')
    folder.change('content/jobs/demo.yaml', 'devices:\n  main', `accepted:\n${list}devices:\n  main`);
  return folder;
}

/** The lines that `check` prints to accept each caution, with a reason and initials. */
async function linesOf(folder: ShopFolder): Promise<string[]> {
  const { out } = await folder.run('check');
  const lines = [...out.matchAll(/or accept it, under accepted: of the job: - (\{.*\})$/gm)].map(
    ([, line = '']) => line,
  );
  // Two that tell the same of one subject are accepted by one line.
  return [...new Set(lines)].map((line) =>
    line.replace('reason: , by: }', 'reason: "Looked at.", by: P. T. }'),
  );
}

describe('check', () => {
  test('prints for each caution the line that accepts it; written into the job, each is accepted and stays printed', async () => {
    const lines = await linesOf(shop());
    expect(lines.length).toBeGreaterThan(0);
    const accepting = shop(...lines);
    const { status, out } = await accepting.run('check');
    expect(status).toBe(0);
    const count = out.match(/: caution, accepted: /g)?.length ?? 0;
    expect(count).toBeGreaterThanOrEqual(lines.length);
    expect(out).toMatch(/\n {2}accepted by P\. T\..*: Looked at\. \(content\/jobs\/demo\.yaml:\d+:\d+\)\n/);
    expect(out).toContain(`${count} caution (${count} accepted)`);
    expect(out).not.toMatch(/or accept it/);
    const json = JSON.parse((await accepting.run('check', '--json')).out);
    const cautions = json.jobs[0].findings.filter(({ level }: Finding) => level === 'caution');
    for (const { accepted } of cautions)
      expect(accepted).toMatchObject({ by: 'P. T.', reason: 'Looked at.' });
  });

  test('exits with 1 for a stop, whatever is accepted', async () => {
    const folder = new ShopFolder(stopped);
    folders.push(folder);
    const stop = JSON.parse((await folder.run('check', '--json')).out).jobs[0].findings[0] as Finding;
    expect(stop.level).toBe('stop');
    folder.change(
      'content/jobs/demo.yaml',
      'status: draft',
      `accepted: [{ finding: ${stop.rule}, of: "${stop.related[0]}", reason: seen, by: P. T. }]\nstatus: draft`,
    );
    const { status, out } = await folder.run('check');
    expect(status).toBe(1);
    expect(out).toMatch(/caution: .* is a stop: it can't be accepted/);
  });

  test('prints no such line for what only follows from another finding', () => {
    const own: Finding = {
      rule: 'stock-short',
      level: 'caution',
      where: { file: 'a.yaml', line: 1, column: 1, path: '' },
      related: ['wire-4'],
      message: 'short',
      value: 3.5,
      limit: 12,
      unit: 'm',
      source: 'stock',
      remedy: 'buy',
    };
    const follower: Finding = { ...own, rule: 'ground-drop', related: ['amp'] };
    const lines = findingText({ ...own, follows: [follower] }).match(/or accept it, .*/g);
    expect(lines).toEqual([
      'or accept it, under accepted: of the job: - { finding: stock-short, of: wire-4, value: 3500 mm, limit: 12 m, reason: , by: }',
    ]);
    expect(findingText({ ...own, follows: [follower] })).toContain(
      'caution: short (ground-drop; a.yaml:1:1)',
    );
  });

  test('puts into quotes what YAML would read otherwise', () => {
    const finding: Finding = {
      rule: 'stock-short',
      level: 'caution',
      where: { file: 'a.yaml', line: 1, column: 1, path: '' },
      related: ['amp: 1'],
      message: 'short',
      value: 3,
      source: 'stock',
      remedy: 'buy',
    };
    expect(findingText(finding)).toContain(
      '{ finding: stock-short, of: "amp: 1", value: "3", reason: , by: }',
    );
  });
});
