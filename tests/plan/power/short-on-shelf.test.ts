import { describe, expect, test } from 'vitest';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';

const reel = (left: string): Change => [
  'content/shop.yaml',
  'red-8: { reels: [30 ft] }',
  `red-8: { reels: [${left}] }`,
];
const feedOf = (...changes: readonly Change[]) => byId(smallPlan(...changes).plan.power.conductors, 'feed');

// With insulation for 200 C, 8 AWG carries the fuse of 60 A under loom in the engine bay too; the feed takes 4.11 m.
const hot: readonly Change[] = ['4', '8'].map((awg) =>
  inParts(
    `size: ${awg} AWG, insulation: 105 C, colour: RD`,
    `size: ${awg} AWG, insulation: 200 C, colour: RD`,
  ),
);
describe('a conductor that is thicker since a reel is too short', () => {
  test('names the thinner one that carries its fuse', () => {
    expect(feedOf(...hot, reel('1 ft'))).toMatchObject({
      ...{ size: { label: '4 AWG' }, shortOf: { part: 'red-8', size: { label: '8 AWG' } } },
    });
  });

  test('names none where its drop asks for the thicker one and the reel is long enough', () => {
    const feed = feedOf(...hot, reel('20 ft'));
    expect(feed.size.label).toBe('4 AWG');
    expect(feed).not.toHaveProperty('shortOf');
  });

  test('names none where its size is written', () => {
    const given = inJob('to: amp.B+', 'to: amp.B+, size: 4 AWG');
    expect(feedOf(...hot, reel('1 ft'), given)).not.toHaveProperty('shortOf');
  });
});
