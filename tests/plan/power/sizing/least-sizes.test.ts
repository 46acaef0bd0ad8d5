import { expect, test } from 'vitest';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';

test('a conductor of which nothing is known may have any size, and a fuse any current', () => {
  const least = new LeastSizes();
  expect(least.of('feed')).toEqual({ areaMm2: 0, why: '' });
  expect(least.flowA('main')).toBe(0);
});

test('a size only grows, and what asked for it first stays the reason', () => {
  const least = new LeastSizes();
  least.raise('feed', 16, 'its drop');
  expect(least.of('feed')).toEqual({ areaMm2: 16, why: 'its drop' });
  least.raise('feed', 10, 'its port');
  least.raise('feed', 16, 'its port');
  expect(least.of('feed')).toEqual({ areaMm2: 16, why: 'its drop' });
  least.raise('feed', 25, 'its port');
  expect(least.of('feed')).toEqual({ areaMm2: 25, why: 'its port' });
  expect(least.of('other').areaMm2).toBe(0);
});

test('a current only grows', () => {
  const least = new LeastSizes();
  for (const [currentA, thenA] of [
    [40, 40],
    [30, 40],
    [50, 50],
  ] as const) {
    least.raiseFlow('main', currentA);
    expect(least.flowA('main')).toBe(thenA);
  }
});

test('a copy is tried without the first one seeing it, and taken over whole', () => {
  const least = new LeastSizes();
  least.raise('feed', 16, 'its drop');
  least.raiseFlow('main', 40);
  const tried = least.copy();
  expect([tried.of('feed'), tried.flowA('main')]).toEqual([{ areaMm2: 16, why: 'its drop' }, 40]);
  tried.raise('feed', 25, 'its port');
  tried.raiseFlow('main', 60);
  expect([least.of('feed').areaMm2, least.flowA('main')]).toEqual([16, 40]);
  least.adopt(tried.held());
  expect([least.of('feed'), least.flowA('main')]).toEqual([{ areaMm2: 25, why: 'its port' }, 60]);
});

test('taking over what is smaller changes nothing', () => {
  const least = new LeastSizes();
  least.raise('feed', 16, 'its drop');
  least.raiseFlow('main', 40);
  const smaller = new LeastSizes();
  smaller.raise('feed', 10, 'its port');
  smaller.raiseFlow('main', 30);
  least.adopt(smaller.held());
  expect([least.of('feed'), least.flowA('main')]).toEqual([{ areaMm2: 16, why: 'its drop' }, 40]);
});

test('attempts that came to nothing only add up, for each kind of end apart, and go along with a copy', () => {
  const least = new LeastSizes();
  least.giveUp('bare', new Map([['amp', 2]]));
  least.giveUp('bare', new Map([['amp', 1]]));
  expect([least.tried('bare').get('amp'), least.tried('reduced').get('amp')]).toEqual([2, undefined]);
  const copy = least.copy();
  copy.giveUp('bare', new Map([['amp', 3]]));
  expect([least.tried('bare').get('amp'), copy.tried('bare').get('amp')]).toEqual([2, 3]);
  least.adopt(copy.held());
  expect(new LeastSizes(least.held().tried).tried('bare').get('amp')).toBe(3);
});
