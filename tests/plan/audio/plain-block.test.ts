import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { inJob, partsFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { jobOf } from '../plan-small-shop.ts';

/** The battery feeds a block without fuses, made for a current; the main fuse stands behind it. */
function plainBlock(current: string) {
  const changes: Change[] = [
    [
      partsFile,
      '  amp-a:\n',
      `  plain-a:
    kind: distribution
    title: Block without fuses
    size: { width: 100 mm, depth: 80 mm, height: 40 mm }
    mass: 1 kg
    current: ${current}
    terminals:
      IN: { role: feed-in, joint: stud, stud: M8, takes: { from: 8 AWG, to: 1/0 AWG } }
      OUT: { role: feed-out, joint: stud, stud: M8, takes: { from: 8 AWG, to: 1/0 AWG } }
  amp-a:
`,
    ],
    inJob('  main-fuse: {', '  plain: { part: plain-a, in: bay }\n  main-fuse: {'),
    inJob(
      '  tail: { from: battery.POS, to: main-fuse.IN, length: 6 in }',
      '  first: { from: battery.POS, to: plain.IN, length: 3 in }\n  tail: { from: plain.OUT, to: main-fuse.IN, length: 3 in }',
    ),
  ];
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks).filter(({ rule }) => rule === 'distribution-over-current');
}

describe('a block without fuses before the first fuse is judged by what flows through it', () => {
  // 300 W at an efficiency of 0.75 and 13.8 V is 29 A, at the lower voltage of its terminals a little more; its fuse is 60 A.
  test.each([
    ['20 A', 'stop'],
    ['40 A', 'caution'],
    ['60 A', undefined],
  ])('made for %s: %s', (current, level) => {
    expect(plainBlock(current).map((finding) => finding.level)).toEqual(level === undefined ? [] : [level]);
  });
});
