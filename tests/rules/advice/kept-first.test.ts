import { describe, expect, test } from 'vitest';
import type { ReadJob } from '../../../lib/model/content/resolved-job.ts';
import { pointer } from '../../../lib/model/place.ts';
import type { JoinedRemark } from '../../../lib/model/remark.ts';
import { keepEdits } from '../../../lib/plan/keeping/keep-edits.ts';
import { keptValues } from '../../../lib/plan/keeping/kept-values.ts';
import { splice } from '../../../lib/read/yaml/splice.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';
import { withKeptFirst } from '../../../lib/rules/kept-first.ts';
import { findingOf } from '../../../lib/rules/rule.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { readShort, shortJob, shortJobs, shortText } from '../../short-jobs/short-shop.ts';
import { withLines } from './advised.ts';

const asks = (...writesAt: readonly (readonly string[])[]) => ({
  ...({ rule: 'narrow-web', level: 'stop' } as const),
  of: ['it'],
  message: 'it is wrong',
  remedy: 'write a line',
  writesAt,
});
/** What is told in the end of remarks that stand in a list. */
const remediesOf = (job: ReadJob, remarks: readonly JoinedRemark[]) =>
  withKeptFirst(
    remarks.map((remark) => findingOf(remark, { path: '' }, job)),
    job.file.id,
  ).map(({ remedy }) => remedy);
const remedyAt = (job: ReadJob, path: readonly string[]) => remediesOf(job, [asks(path)])[0];
const wholeEntries = (job: ReadJob) =>
  job.proposals.map(({ path }) => path).filter(({ length }) => length === 2);

describe('a line that is to be written at what is only proposed', () => {
  test.each(shortJobs)('is told with what writes that first, for all that %s leaves out', (id) => {
    const job = shortJob(id);
    expect(wholeEntries(job).length).toBeGreaterThan(0);
    for (const path of wholeEntries(job)) {
      expect(remedyAt(job, path)).toContain(`${path[1]} is only proposed so far: \`rackleaf keep ${id} `);
      expect(remedyAt(job, [...path, 'size'])).toBe(remedyAt(job, path));
    }
  });

  test('is told in full once, and by the word of what is kept at the findings that follow', () => {
    const job = shortJob('under-seat-five');
    const [one, two] = wholeEntries(job).filter(([section]) => section === 'links');
    if (!one || !two) throw new Error('The job leaves links out.');
    expect(remediesOf(job, [asks(), asks(one), asks(two), asks(), asks(one)])).toEqual([
      'write a line',
      `write a line; ${one[1]} is only proposed so far: \`rackleaf keep under-seat-five links.${one[1]} --yes\` writes it into the job, and the line goes there`,
      `write a line; keep links.${two[1]} first`,
      'write a line',
      `write a line; keep links.${one[1]} first`,
    ]);
  });

  test('is told alone for what the job has, and for what it has not at all', () => {
    const job = shortJob('under-seat-five');
    for (const device of Object.keys(job.file.devices))
      if (!wholeEntries(job).some(([section, name]) => section === 'devices' && name === device))
        expect(remedyAt(job, ['devices', device])).toBe('write a line');
    expect(remedyAt(job, ['links', 'no-such-link'])).toBe('write a line');
    expect(remediesOf(job, [{ ...asks(), advice: [[{ path: '/links/no-such', value: 1 }]] }])).toEqual([
      'write a line',
    ]);
  });

  test('goes there once it is kept, and nothing more is told', () => {
    const id = 'under-seat-five';
    const job = shortJob(id);
    const file = `content/jobs/${id}.yaml`;
    const doc = readYaml(file, shortText(id)).value;
    if (!doc) throw new Error(`${file} can not be read.`);
    const { plan } = planKept(job);
    const text = splice(shortText(id), keepEdits(doc, keptValues(job, plan), ['links'], plan).edits);
    if (typeof text !== 'string') throw new Error(text.fault);
    const links = wholeEntries(job).filter(([section]) => section === 'links');
    const lines = links.map((path, n) => ({ file, path: pointer([...path, 'label']), text: `K${n}` }));
    const [written] = withLines([{ path: file, text }], lines);
    const { job: read, problems } = readShort(written?.text ?? '');
    expect(problems.map(({ message }) => message)).toEqual([]);
    for (const path of links) if (read) expect(remedyAt(read, path)).toBe('write a line');
  });
});
