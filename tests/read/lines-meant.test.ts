import { expect, test } from 'vitest';
import { openNames } from '../../lib/read/schema/line-meant.ts';
import { readShort, shop, shortText } from '../short-jobs/short-shop.ts';

/** What is told of the job with some lines before its devices, or with a text exchanged, with what to do. */
function told(job: string): string {
  const { problems } = readShort(job, undefined, shop);
  return problems.map(({ message, remedy }) => `${message}; ${remedy}`).join('\n');
}

const job = shortText('under-seat-five');
const before = (lines: string) => job.replace('\ndevices:\n', () => `\n${lines}\ndevices:\n`);
const instead = (right: string, slip: string) => {
  if (!job.includes(right)) throw new Error(`The job has no "${right}".`);
  return job.replace(right, () => slip);
};

const ends = 'to-sub: { from: amp.CH5, to: sub.C1 }';

/** Each is written as it is told: what reads then is no longer told of. */
test.each([
  ['links:\n  to-sub: amp.CH5 -> sub.C1', `write ${ends}`],
  ['links:\n  to-sub: amp.CH5 → sub.C1', `write ${ends}`],
  ['links:\n  to-sub: amp.CH5 to sub.C1', `write ${ends}`],
  ['links:\n  - amp.CH5 -> sub.C1', `write under links: ${ends}`],
  ['links:\n  amp.CH5 -> sub.C1:', `write ${ends}`],
  ['links:\n  amp.CH5: sub.C1', `write ${ends}`],
  ['left-open:\n  amp.CH5: spare', 'write amp.CH5+|CH5-: with the reason behind it'],
  ['left-open:\n  amp.IN5..6: spare', 'write amp.IN5|IN6: with the reason behind it'],
  ['left-open:\n  amp.IN5-6: spare', 'write amp.IN5|IN6: with the reason behind it'],
  ['left-open:\n  amp.IN5, amp.IN6: spare', 'write amp.IN5|IN6: with the reason behind it'],
  ['left-open: amp.IN5', 'left-open: { amp.IN5: not used on this job }'],
  ['left-open: [amp.IN5, amp.IN6]', '{ amp.IN5: not used on this job, amp.IN6: not used on this job }'],
  [
    'accepted:\n  finding: drop-over-limit\n  of: amp\n  reason: A short run\n  by: J',
    '  - { finding: drop-over-limit, of: amp, reason: , by: }',
  ],
  ['accepted:\n  drop-over-limit: A short run', '  - { finding: drop-over-limit, of: , reason: , by: }'],
])('%s is told as it is written right', (lines, line) => {
  const words = told(before(lines));
  expect(words).toContain(line);
  // A reason may be private: it is not repeated.
  expect(words).not.toContain('A short run');
});

test('what is told of a link, or of what stays open, reads once it is written so', () => {
  expect(told(before(`links:\n  ${ends}`))).toBe('');
  expect(told(before('left-open:\n  amp.IN5|IN6: spare'))).not.toContain('left-open');
});

test.each([
  ['on: board', 'in: board', 'board is a board of this job: write on: board'],
  ['in: cargo-floor', 'on: cargo-floor', 'cargo-floor is a place of hatchback: write in: cargo-floor'],
  ['on: board }', 'on: board, fuse: 60 A }', 'leave it out: it is chosen'],
])('%s for which %s stands is told', (right, slip, line) => {
  expect(told(instead(right, slip))).toContain(line);
});

test.each(['outline: 17 in x 12 in', 'outline: { width: 17 in, height: 12 in }'])(
  'a board of two numbers is told as a rectangle: %s',
  (slip) => {
    const boat = shortText('open-boat');
    const words = told(boat.replace(/outline: \{.*\}/, () => slip));
    expect(words).toContain('write outline: { rectangle: { width: 17 in, height: 12 in } }');
  },
);

test.each(['driver', 'passenger'])('the side of the %s is told by where one sits', (side) => {
  const files = shop.map(({ path, text }) => ({
    path,
    text: text.replace('zone: cabin, side: left', `zone: cabin, side: ${side}`),
  }));
  const { problems } = readShort(job, undefined, files);
  const own = side === 'driver' ? 'left' : 'right';
  expect(problems.map(({ remedy }) => remedy).join('\n')).toContain(
    `with the steering wheel on the left write side: ${own}`,
  );
});

test.each([
  ['amp.IN5..8', 'amp.IN5|IN6|IN7|IN8'],
  ['amp.CH1-2+', 'amp.CH1+|CH2+'],
  ['amp.IN5 and amp.IN6', 'amp.IN5|IN6'],
  ['amp.IN5, IN6', 'amp.IN5|IN6'],
  ['amp.IN5, sub.C1', null],
  ['the fifth input', null],
])('%s stays open as %s', (written, names) => {
  expect(openNames(written)).toBe(names);
});
