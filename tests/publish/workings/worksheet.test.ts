import { describe, expect, it } from 'vitest';
import { worksheetPages } from '../../../lib/publish/pages/worksheet-page.ts';
import type { Table } from '../../../lib/publish/sheets/table.ts';
import { markWords } from '../../../lib/publish/words/words.ts';
import { plainNumber } from '../../../lib/publish/words/written.ts';
import { workingTables } from '../../../lib/publish/workings/index.ts';
import { type FixedJob, fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { sampleJob, sampleSite } from '../sample/sample-site.ts';

/** The worksheet page of a job as a reader has it before him, as one text. */
function pageOf(id: FixedJob): string {
  const published = { ...sampleJob(), plan: fixedPlan(id), revisions: [] };
  const [page] = worksheetPages({ site: sampleSite([published]), audience: 'shop' }, published);
  return JSON.stringify(page?.model().body);
}

/** Everything that each row of a table says, in one text a row. */
function rowsOf(table: Table | undefined): string[] {
  return (table?.rows ?? []).map(({ cells }) =>
    cells.map(({ text, beside }) => `${text} ${beside ?? ''}`).join(' | '),
  );
}

const table = (id: FixedJob, caption: string): string[] =>
  rowsOf(workingTables(fixedPlan(id)).find((one) => one.caption === caption));

describe.each(fixedJobs)('the worksheet of %s', (id) => {
  const page = pageOf(id);

  it('prints the mark of every trace that has one, beside the trace', () => {
    const marked = Object.entries(fixedPlan(id).traces).filter(([, { mark }]) => mark !== undefined);
    expect(new Set(marked.map(([, { mark }]) => mark))).toEqual(new Set(['cp', 'mem']));
    for (const [path, { mark }] of marked) {
      const from = page.indexOf(`"id":${JSON.stringify(path)},"anchor"`);
      expect(from, path).toBeGreaterThan(0);
      const [working = ''] = page.slice(from).split(',"place":', 1);
      expect(working, path).toContain(`"mark":"${mark ? markWords[mark] : ''}"`);
    }
  });

  it('prints every house rule with its value, its source and its mark', () => {
    const { rules } = fixedPlan(id);
    const rows = table(id, 'House rules');
    expect(rows).toHaveLength(rules.length);
    expect(rules.length).toBeGreaterThan(100);
    rules.forEach(({ name, says, value, unit, citation, mark }, index) => {
      const row = rows[index] ?? '';
      expect(row.startsWith(`${says} ${name} | ${`${plainNumber(value)} ${unit}`.trimEnd()} `), row).toBe(
        true,
      );
      expect(row).toContain(citation);
      if (mark !== undefined) expect(row).toContain(`${mark}: ${markWords[mark]}`);
    });
  });

  it('prints the mark of every finding that has one', () => {
    const rows = table(id, 'Findings with their sources');
    const marked = fixedPlan(id).findings.filter(({ mark }) => mark !== undefined);
    expect(marked.length).toBeGreaterThan(0);
    for (const { message, mark } of marked) {
      const own = rows.filter((row) => row.includes(message.slice(1)));
      expect(own.length, message).toBeGreaterThan(0);
      for (const row of own) expect(row).toContain(mark ? markWords[mark] : '');
    }
  });
});
