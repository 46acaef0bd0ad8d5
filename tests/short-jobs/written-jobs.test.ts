import { expect, test } from 'vitest';
import { fixedJob, fixedJobs } from '../boards/fixed-jobs.ts';
import { demoJob, demoJobs } from '../plan/demo.ts';
import { shortJob, shortJobs, shortText } from './short-shop.ts';

test.each(demoJobs.filter((id) => demoJob(id).file.links !== undefined))(
  'nothing is proposed for %s, which writes all of its links',
  (id) => {
    expect(demoJob(id).proposals).toEqual([]);
  },
);

test.each(fixedJobs)('nothing is proposed for the fixed job %s', (id) => {
  expect(fixedJob(id).proposals).toEqual([]);
});

test.each(shortJobs)('%s has at most 30 lines of at most 100 characters and 150 values', (id) => {
  const lines = shortText(id)
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.trim().startsWith('#'));
  expect(lines.length).toBeLessThanOrEqual(30);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
  expect(lines.join(' ').match(/[^\s{}[\],:]+/g)?.length ?? 0).toBeLessThanOrEqual(150);
});

test.each(shortJobs)('%s is read whole, and every terminal of its own is accounted for', (id) => {
  const job = shortJob(id);
  const linked = new Set(
    job.links.flatMap(({ from, to }) => [from, to].map((end) => `${end.device}.${end.terminal}`)),
  );
  const open = Object.keys(job.file['left-open']).flatMap((reference) => {
    const [device = '', names = ''] = [
      reference.slice(0, reference.indexOf('.')),
      reference.slice(reference.indexOf('.') + 1),
    ];
    return names.split('|').map((name) => `${device}.${name}`);
  });
  const loose = job.devices
    .filter(({ origin }) => origin === 'job')
    .flatMap(({ id: device, facts }) => Object.keys(facts.terminals).map((name) => `${device}.${name}`))
    .filter((terminal) => !linked.has(terminal) && !open.includes(terminal));
  expect(loose).toEqual([]);
});
