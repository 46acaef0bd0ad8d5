import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { inJob, partsFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { byId, jobOf } from '../plan-small-shop.ts';

/** The small shop's amplifier fed by so many leads side by side, each behind a fuse of its own. */
function sideBySide(count: number, ceilingA: number, given = '') {
  const more = Array.from({ length: count - 1 }, (_, k) => k + 2);
  const changes: Change[] = [
    [partsFile, 'fuse: 60 A, amplifier-class', `fuse: ${ceilingA} A, amplifier-class`],
    inJob(
      '  main-fuse: { part: holder-a, in: bay }\n',
      ['main-fuse', ...more.map((k) => `fuse-${k}`)]
        .map((id) => `  ${id}: { part: holder-a, in: bay${given} }\n`)
        .join(''),
    ),
    inJob(
      '  turn-on: {',
      `${more
        .map(
          (k) =>
            `  tail-${k}: { from: battery.POS, to: fuse-${k}.IN, length: 6 in }\n  feed-${k}: { from: fuse-${k}.OUT, to: amp.B+, length: 10 ft }\n`,
        )
        .join('')}  turn-on: {`,
    ),
  ];
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  const findings = judge(job, plan, remarks);
  const fuses = plan.power.fuses;
  return { plan, fuses, found: (rule: string) => findings.filter((finding) => finding.rule === rule) };
}

describe('leads side by side, each behind its own fuse', () => {
  test.each([2, 3])('%i of them: every fuse has the whole current, no number is none', (count) => {
    const { fuses, plan } = sideBySide(count, 180);
    expect(fuses).toHaveLength(count);
    const [{ ratedA } = { ratedA: 0 }] = fuses;
    // 300 W at an efficiency of 0.75 and 13.8 V: 29 A.
    expect(ratedA).toBeCloseTo(29, 0);
    for (const fuse of fuses) {
      expect(fuse).toMatchObject({ ratedA, loads: ['amp'], ceilingA: 180, source: 'battery' });
      expect(fuse.ratingA).toBeGreaterThanOrEqual(ratedA);
      expect(fuse.distanceM).toBeCloseTo(0.1524, 6);
    }
    const sumA = fuses.reduce((sum, { ratingA }) => sum + (ratingA ?? Number.NaN), 0);
    expect(sumA).toBeLessThanOrEqual(180);
    const ratings = fuses.map(({ ratingA }) => ratingA ?? Number.NaN);
    const others = sumA - Math.min(...ratings);
    const feed = byId(plan.power.conductors, 'feed-2');
    expect(feed.neededA).toBe(Math.max(ratings[1] ?? Number.NaN, others));
    expect(feed.ampacityA).toBeGreaterThanOrEqual(feed.neededA);
    expect(feed.fuses.toSorted()).toEqual(fuses.map(({ id }) => id).toSorted());
  });

  test.each([
    [2, []],
    // All three fuses pass 180 A through the one ground, and no cable of the catalogue carries that.
    [3, ['ground']],
  ])('%i of them, large enough: no lead counts as unprotected', (count, grounds) => {
    const { found } = sideBySide(count, 180);
    for (const rule of ['conductor-without-fuse', 'fuse-over-conductor', 'fuses-over-ceiling'])
      expect(found(rule)).toEqual([]);
    expect(found('conductor-under-need').map(({ related: [conductor] }) => conductor)).toEqual(grounds);
  });

  test('given fuses that together let more in at one end than a lead carries stop, with both numbers', () => {
    const { found, plan } = sideBySide(3, 500, ', fuse: 100 A');
    const feed = byId(plan.power.conductors, 'feed-2');
    expect(feed.neededA).toBe(200);
    expect(feed.ampacityA).toBeLessThan(200);
    const finding = found('conductor-under-need').find(({ related }) => related[0] === 'feed-2');
    expect(finding).toMatchObject({ level: 'stop', value: 200, limit: feed.ampacityA });
  });

  test('fuses that together pass what the maker of the device allows stop', () => {
    const [finding] = sideBySide(2, 60, ', fuse: 40 A').found('fuses-over-ceiling');
    expect(finding).toMatchObject({ level: 'stop', value: 80, limit: 60 });
    expect(sideBySide(2, 80, ', fuse: 40 A').found('fuses-over-ceiling')).toEqual([]);
  });

  test('where no share of the ceiling carries the current, no fuse is chosen, and the reason has true numbers', () => {
    const { fuses, found } = sideBySide(3, 60);
    expect(fuses.map(({ ratingA }) => ratingA)).toEqual([null, null, null]);
    expect(fuses[0]?.reason).toContain("the limit is maker's ceiling, 60 A, over 3 fuses, 20 A");
    expect(found('fuse-without-rating')).toHaveLength(3);
  });
});

describe('bare leads side by side to one fuse', () => {
  test('sheet and finding tell the same distance: that of the longer lead', () => {
    const job = jobOf(
      smallShop(
        inJob('  feed: {', '  tail-2: { from: battery.POS, to: main-fuse.IN, length: 30 in }\n  feed: {'),
      ),
    );
    const { plan, remarks } = planKept(job);
    const far = judge(job, plan, remarks).filter(({ rule }) => rule === 'fuse-distance');
    expect(byId(plan.power.fuses, 'main-fuse').distanceM).toBeCloseTo(0.762, 9);
    expect(far).toEqual([expect.objectContaining({ level: 'stop', value: expect.closeTo(0.762, 9) })]);
    expect(far[0]?.related).toContain('tail-2');
  });
});
