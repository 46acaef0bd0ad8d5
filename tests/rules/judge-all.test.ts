import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findingSchema } from '../../lib/model/finding.ts';
import { judge } from '../../lib/rules/index.ts';
import { about } from './case.ts';
import { cases } from './cases/index.ts';
import { conductor, faulty, fuse, remark } from './changes.ts';

test('the order of remarks, and saying one twice, changes nothing', () => {
  const { job, plan } = faulty();
  const remarks = [
    remark({}),
    remark({ rule: 'coil-shorted', level: 'stop', of: ['amp.2'] }),
    remark({ level: 'note' }, '/links/feed'),
    remark({ of: ['dsp'] }),
  ];
  const usual = judge(job, plan, remarks);
  fc.assert(
    fc.property(fc.shuffledSubarray([...remarks, ...remarks], { minLength: 8 }), (shuffled) => {
      expect(judge(job, plan, shuffled)).toEqual(usual);
    }),
    { numRuns: 30 },
  );
});

test('every finding is one of the plan document', () => {
  const firing = Object.values(cases).flatMap(({ fires }) => fires);
  const findings = firing.flatMap(({ about: make }) => {
    const { job, plan } = make();
    return judge(job, plan, []);
  });
  expect(findings.length).toBeGreaterThan(firing.length);
  for (const finding of findings) expect(findingSchema.parse(finding)).toEqual(finding);
});

test('a larger fuse or a weaker conductor never takes a stop away', () => {
  const stopped = (ratingA: number, ampacityA: number) => {
    const { job, plan } = about({
      plan: (made) => {
        fuse(made, 'block.OUT1').ratingA = ratingA;
        conductor(made, 'amp-feed').ampacityA = ampacityA;
      },
    });
    return judge(job, plan, []).some(({ rule }) => rule === 'fuse-over-conductor');
  };
  const current = fc.integer({ min: 1, max: 300 });
  fc.assert(
    fc.property(current, current, current, current, (ratingA, more, ampacityA, less) => {
      if (!stopped(ratingA, ampacityA)) return;
      expect(stopped(ratingA + more, ampacityA)).toBe(true);
      expect(stopped(ratingA, Math.max(0, ampacityA - less))).toBe(true);
    }),
    { numRuns: 40 },
  );
});
