import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type Effects, realEffects } from '../../../lib/commands/effects.ts';
import { type ExportWords, exportJobs } from '../../../lib/commands/export.ts';
import { sheets } from '../../../lib/publish/sheets/index.ts';
import { fixedRoot } from '../../boards/fixed-jobs.ts';
import { keptBetweenTests } from '../../shops/test-crew.ts';
import { openPdf } from '../pdf-strokes.ts';

const everything: ExportWords = {
  jobs: ['under-seat-five'],
  to: 'out',
  formats: [],
  units: null,
  paper: null,
  labelStock: null,
  sheets: null,
  json: true,
};

interface Recorded {
  readonly status: number;
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  readonly told: readonly string[];
}

const elsewhere = mkdtempSync(join(tmpdir(), 'rackleaf-pdf-'));
afterAll(() => rmSync(elsewhere, { recursive: true, force: true }));

/** Runs an export on the fixed shop and keeps what it writes. */
async function run(words: Partial<ExportWords> = {}): Promise<Recorded> {
  const files = new Map<string, string | Uint8Array>();
  const told: string[] = [];
  const effects: Effects = {
    ...realEffects(fixedRoot),
    // What is written lies elsewhere, so that the fixed shop stays as it is.
    root: elsewhere,
    ...(keptBetweenTests !== null && { keptIn: keptBetweenTests }),
    watched: false,
    out: () => undefined,
    tell: (text) => told.push(text),
    write: async (path, content) => {
      files.set(path, content);
    },
  };
  const status = await exportJobs(effects, { ...everything, ...words });
  return { status, files, told };
}

/** The text of every page; what the type joins to one glyph, such as fi, comes as a piece of its own. */
async function textOf(document: Awaited<ReturnType<typeof openPdf>>): Promise<string> {
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(''));
  }
  return pages.join('\n');
}

/** Private values of the job, as its file has them. */
const privateValues = ['A. Example', '555 0100', 'EXM 001'];

describe('export of a job in every format', () => {
  let recorded: Recorded;
  let pdf: Uint8Array;
  let text = '';
  beforeAll(async () => {
    recorded = await run();
    const content = recorded.files.get('out/DRAFT-under-seat-five-A-sheets.pdf');
    if (!(content instanceof Uint8Array)) throw new Error(recorded.told.join('\n'));
    pdf = content;
    text = await textOf(await openPdf(pdf));
  });

  it('marks every file of a draft in its name, with job and revision', () => {
    expect(recorded.status).toBe(0);
    expect(
      [...recorded.files.keys()].filter((path) => !path.startsWith('out/DRAFT-under-seat-five-A-')),
    ).toEqual([]);
    expect(new Set([...recorded.files.keys()].map((path) => path.split('.').at(-1)))).toEqual(
      new Set(['svg', 'dxf', 'html', 'csv', 'pdf']),
    );
  });

  it('lets no private value into a file or its name', async () => {
    const content = await realEffects(fixedRoot).readContent();
    const source = content.find(({ path }) => path === 'content/jobs/under-seat-five.yaml')?.text ?? '';
    for (const value of privateValues) {
      expect(source, 'the job file holds what is looked for').toContain(value);
      for (const [path, file] of recorded.files) {
        const readable = file instanceof Uint8Array ? `${Buffer.from(file).toString('latin1')}${text}` : file;
        expect(path).not.toContain(value);
        expect(readable.includes(value), `${value} in ${path}`).toBe(false);
      }
    }
  });

  it('tells job and revision inside every text, in each row of a table', () => {
    for (const [path, content] of recorded.files) {
      if (typeof content !== 'string') continue;
      if (!path.endsWith('.csv')) {
        if (!path.includes('drawing-'))
          expect(content, path).toMatch(/under-seat-five, revision A|under-seat-five.*revision A/);
        continue;
      }
      const [titles = '', ...rows] = content.trimEnd().split('\r\n');
      expect(titles, path).toMatch(/,job,revision$/);
      expect(
        rows.filter((row) => !row.endsWith(',under-seat-five,A')),
        path,
      ).toEqual([]);
    }
  });

  it('has a short set for the bench, which says that it is one', async () => {
    const { status, files } = await run({ formats: [], sheets: 'bench' });
    expect(status).toBe(0);
    expect([...files.keys()]).toEqual(['out/DRAFT-under-seat-five-A-bench-sheets.pdf']);
    const short = [...files.values()][0];
    if (!(short instanceof Uint8Array)) throw new Error('No PDF was made.');
    const document = await openPdf(short);
    const titles = JSON.stringify(await document.getOutline());
    for (const id of ['cover', 'wire-list', 'bench-test']) expect(titles).toContain(titleOf(id));
    for (const id of ['survey', 'packet', 'power-diagram']) expect(titles).not.toContain(titleOf(id));
    expect(await textOf(document)).toMatch(/Bench set: \d+ of \d+ sheets/);
    expect(document.numPages).toBeLessThan((await openPdf(pdf)).numPages);
  });

  it('has the sheets as bookmarks, each on its page, and text that can be searched', async () => {
    const document = await openPdf(pdf);
    const outline = (await document.getOutline()) ?? [];
    const titles = JSON.stringify(
      outline.map(({ title, items }) => [title, items.map((item) => item.title)]),
    );
    for (const id of ['cover', 'cut-and-drill', 'wire-list', 'order-of-work', 'pick-list'])
      expect(titles).toContain(titleOf(id));
    expect(document.numPages).toBeGreaterThan(10);
    expect(text).toContain('amp.B+');
    expect(text).toContain('under-seat-five');
  });

  it('bears the day of issue and no other time', async () => {
    const { info } = await (await openPdf(pdf)).getMetadata();
    expect(info).toMatchObject({ CreationDate: expect.stringMatching(/^D:\d{8}000000/) });
    const dates = new Set(
      Buffer.from(pdf)
        .toString('latin1')
        .match(/\(D:\d{14}/g),
    );
    expect(dates.size).toBe(1);
  });

  it('is the same bytes when it is printed again', async () => {
    const again = (await run({ formats: ['pdf'] })).files.get('out/DRAFT-under-seat-five-A-sheets.pdf');
    expect(again instanceof Uint8Array && Buffer.compare(again, pdf)).toBe(0);
  });
});

function titleOf(id: string): string {
  return Object.entries(sheets).find(([name]) => name === id)?.[1].title ?? 'no such sheet';
}

describe('export without what it needs', () => {
  const kept = process.env.RACKLEAF_BROWSER;
  afterEach(() => {
    if (kept === undefined) delete process.env.RACKLEAF_BROWSER;
    else process.env.RACKLEAF_BROWSER = kept;
  });

  it('says that the browser does not start, exits with 3, and writes all else', async () => {
    process.env.RACKLEAF_BROWSER = '/bin/false';
    const { status, files, told } = await run({ formats: ['pdf', 'csv'] });
    expect(status).toBe(3);
    expect(told.join('\n')).toMatch(/no PDF was made: the browser \/bin\/false could not be started/);
    expect([...files.keys()]).toContain('out/DRAFT-under-seat-five-A-wires.csv');
  });

  it.each([
    [{ formats: ['dwg'] }, 'there is no format "dwg"'],
    [{ jobs: ['nobody'] }, 'there is no job "nobody"'],
    [{ jobs: ['under-seat-five', 'van-three-amps'] }, 'of several jobs only the nest is made'],
    [{ formats: [], sheets: 'shop' }, '--sheets takes bench'],
    [{ sheets: 'bench' }, '--sheets goes with --format pdf alone'],
    [{ units: 'cubit' }, '--units takes mm or inch'],
    [{ paper: 'a3' }, '--paper takes letter or a4'],
    [{ labelStock: 'columns=9' }, 'mm past the paper'],
  ] satisfies [Partial<ExportWords>, string][])('refuses %j and writes nothing', async (words, reason) => {
    const { status, files, told } = await run({ formats: ['csv'], ...words });
    expect(status).toBe(2);
    expect(told.join('\n')).toContain(reason);
    expect(files.size).toBe(0);
  });
});
