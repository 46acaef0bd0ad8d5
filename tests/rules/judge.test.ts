import { expect, test } from 'vitest';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { PlacedRemark } from '../../lib/model/remark.ts';
import { judge } from '../../lib/rules/index.ts';
import { findingOf } from '../../lib/rules/rule.ts';
import { nothingPlanned } from '../plan/nothing-planned.ts';
import { about, entry } from './case.ts';
import { faulty, remark, wire } from './changes.ts';

/** The lines of a file: a job whose values stand where their paths say. */
function placed(job: ReadJob, lines: Readonly<Record<string, number>>): ReadJob {
  return {
    ...job,
    place: (path) => ({ file: 'job.yaml', line: lines[path] ?? 1, column: 1, path }),
  };
}

test('a job with nothing wrong has no finding', () => {
  const { job, plan } = about();
  expect(judge(job, plan, [])).toEqual([]);
});

test('a plan in which everything is missing gives stops and throws nothing', () => {
  const { job, plan } = about();
  const empty = { ...plan, ...nothingPlanned };
  const stops = judge(job, empty, []).filter(({ level }) => level === 'stop');
  expect(new Set(stops.map(({ rule }) => rule))).toEqual(
    new Set([
      'terminal-unaccounted',
      'device-without-ground',
      'device-without-supply',
      'turn-on-missing',
      'control-unlisted',
    ]),
  );
});

test('a remark becomes a finding at its place', () => {
  const { job, plan } = about();
  expect(judge(job, plan, [remark({ value: 5, limit: 12.7, unit: 'mm' })])).toEqual([
    {
      rule: 'air-gap-short',
      level: 'caution',
      where: { file: 'job.yaml', line: 1, column: 1, path: '/devices/amp' },
      related: ['amp', 'dsp'],
      message: 'too near',
      value: 5,
      limit: 12.7,
      unit: 'mm',
      source: 'common practice, no source',
      mark: 'cp',
      remedy: 'move it',
    },
  ]);
});

test('findings stand gravest first, then by line, by rule, by subject', () => {
  const { job, plan } = about();
  const lined = placed(job, { '/late': 9, '/early': 2 });
  const list = judge(lined, plan, [
    remark({ level: 'note', rule: 'port-note' }, '/early'),
    remark({ level: 'stop', rule: 'items-overlap' }, '/late'),
    remark({ level: 'caution', rule: 'part-gap-short', of: ['z'] }, '/early'),
    remark({ level: 'caution', rule: 'part-gap-short', of: ['a'] }, '/early'),
    remark({ level: 'caution', rule: 'air-gap-short' }, '/late'),
  ]);
  expect(list.map(({ rule, where, related }) => `${rule} ${where.line} ${related[0]}`)).toEqual([
    'items-overlap 9 amp',
    'part-gap-short 2 a',
    'part-gap-short 2 z',
    'air-gap-short 9 amp',
    'port-note 2 amp',
  ]);
});

test('an exact double stands once; the same words of another place stay', () => {
  const { job, plan } = about();
  const list = judge(job, plan, [remark({}), remark({}), remark({}, '/devices/dsp')]);
  expect(list.map(({ where }) => where.path)).toEqual(['/devices/amp', '/devices/dsp']);
});

test('a remark that knows the reason speaks for a verdict that only misses something', () => {
  const { job, plan } = faulty();
  const shorted = remark({ rule: 'coil-shorted', level: 'stop', of: ['amp.2'] });
  const rulesOf = (remarks: readonly PlacedRemark[]) => judge(job, plan, remarks).map(({ rule }) => rule);
  expect(rulesOf([])).toContain('load-unknown');
  expect(rulesOf([shorted])).not.toContain('load-unknown');
  expect(rulesOf([shorted])).toContain('coil-shorted');
});

test('a milder remark, or one about something else, never speaks for a stop', () => {
  const { job, plan } = faulty();
  for (const other of [
    remark({ rule: 'coil-shorted', level: 'caution', of: ['amp.2'] }),
    remark({ rule: 'coil-shorted', level: 'stop', of: ['amp.1'] }),
    remark({ rule: 'air-gap-short', level: 'stop', of: ['amp.2'] }),
  ])
    expect(judge(job, plan, [other]).map(({ rule }) => rule)).toContain('load-unknown');
});

test('a milder remark of the same fact is not told beside the graver verdict', () => {
  const { job, plan } = faulty();
  const told = (of: readonly string[]) =>
    judge(job, plan, [remark({ rule: 'coil-shorted', level: 'note', of: [...of] })]).map(({ rule }) => rule);
  expect(told(['amp.2'])).not.toContain('coil-shorted');
  expect(told(['amp.2'])).toContain('load-unknown');
  expect(told(['amp.1'])).toContain('coil-shorted');
  expect(told(['amp.2', 'dsp'])).toContain('coil-shorted');
});

test('a remedy that writes into no text that stands there offers no edit', () => {
  const { job, plan } = about({
    content: (content) => {
      entry(content.job.links, 'amp-feed').label = 'p7';
    },
    plan: (made) => {
      wire(made, 'amp-feed').label = 'p7';
      wire(made, 'dsp-feed').label = 'P7';
    },
  });
  const edits = (span: ReadJob['span']) =>
    judge({ ...job, span }, plan, []).flatMap(({ rule, edit }) => (rule === 'label-twice' ? [edit] : []));
  expect(edits(() => null)).toEqual([undefined]);
  expect(edits(() => ({ start: 10, end: 12 }))).toEqual([
    expect.objectContaining({ file: 'job.yaml', start: 10, end: 12 }),
  ]);
});

test('a port that a conductor does not go into at all is not told as shared as well', () => {
  const { job, plan } = about({
    content: (content) => {
      content.job.links['radio-ground'] = { from: 'radio.GND', to: 'ground.G1' };
    },
  });
  const told = (...remarks: readonly PlacedRemark[]) => judge(job, plan, remarks).map(({ rule }) => rule);
  expect(told()).toContain('port-shared');
  expect(told(remark({ rule: 'port-refuses-conductor', level: 'stop', of: ['ground.G1'] }))).not.toContain(
    'port-shared',
  );
});

test('what is to be written stands in a finding with its file and as it is written', () => {
  const { job } = about();
  const { remark: told } = remark({});
  const advice = [[{ path: '/links/amp-feed/size', value: '4 AWG' }]] as const;
  expect(findingOf({ ...told, advice }, { path: '/links/amp-feed' }, job).advice).toEqual([
    [{ file: 'job.yaml', path: '/links/amp-feed/size', text: '4 AWG' }],
  ]);
  expect(findingOf(told, { path: '/links/amp-feed' }, job)).not.toHaveProperty('advice');
});
