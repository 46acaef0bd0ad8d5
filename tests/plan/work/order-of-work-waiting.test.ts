import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orderOfWork } from '../../../lib/plan/work/steps/order-of-work.ts';
import type { Work } from '../../../lib/plan/work/work.ts';
import { randomWork } from './random-work.ts';
import { hasRing } from './steps/step-order.ts';

describe('things that wait for each other', () => {
  const work = (declared: Work['declared']): Work => {
    const [sampled] = fc.sample(randomWork, { numRuns: 1, seed: 1 });
    const item = sampled?.plan.items[0];
    if (!sampled || !item) throw new Error('A plan has an item.');
    const items = ['a', 'b', 'c'].map((id) => ({ ...item, id, board: 'left', seat: null }));
    const [board] = fc.sample(randomWork, { numRuns: 40, seed: 2 }).flatMap(({ plan }) => plan.boards);
    if (!board) throw new Error('Some plan has a board.');
    return {
      ...sampled,
      times: { 'mount-item': 600 },
      declared,
      plan: {
        ...sampled.plan,
        items,
        wires: [],
        runs: [],
        controls: [],
        measurements: [],
        boards: [{ ...board, id: 'left', placements: [], routes: [] }],
      },
    };
  };

  it('are named with the way out, and an order is left all the same', () => {
    const { steps, rings } = orderOfWork(
      work([
        { item: 'a', after: 'b', why: 'it stands over it' },
        { item: 'b', after: 'a', why: 'its lid is under it' },
      ]),
    );
    expect(rings).toHaveLength(1);
    expect(rings[0]?.message).toMatch(/a and b wait for each other/);
    expect(rings[0]?.message).toMatch(/its lid is under it/);
    expect(rings[0]?.remedy).toMatch(/lower a|take one after: out/);
    expect(steps.flatMap(({ installs }) => installs).toSorted()).toEqual(['a', 'b', 'c']);
    expect(hasRing(steps)).toBe(false);
  });

  it('are not told where a chain has an end', () => {
    const { steps, rings } = orderOfWork(
      work([
        { item: 'a', after: 'b', why: 'it stands over it' },
        { item: 'b', after: 'c', why: 'it stands over it' },
      ]),
    );
    expect(rings).toEqual([]);
    const at = (id: string) => steps.findIndex(({ installs }) => installs.includes(id));
    expect(at('a')).toBeGreaterThan(at('b'));
    expect(at('b')).toBeGreaterThan(at('c'));
  });

  it("reckons with the shop's own times: 600 s a part are 10 min", () => {
    const { steps, schedule } = orderOfWork(work([]));
    expect(steps.find(({ installs }) => installs.length === 3)?.minutes).toBe(30);
    expect(schedule.times.find(({ name }) => name === 'mount-item')).toMatchObject({
      minutes: 10,
      given: true,
    });
    expect(schedule.times.find(({ name }) => name === 'lay-wire')).toMatchObject({
      given: false,
      mark: 'cp',
    });
  });

  it('tells no piece of work as shorter than it takes: three parts at 8 s are a minute, at 21 s two', () => {
    const minutes = (seconds: number) =>
      orderOfWork({ ...work([]), times: { 'mount-item': seconds } }).steps.find(
        ({ installs }) => installs.length === 3,
      )?.minutes;
    expect(minutes(8)).toBe(1);
    expect(minutes(20)).toBe(1);
    expect(minutes(21)).toBe(2);
  });
});
