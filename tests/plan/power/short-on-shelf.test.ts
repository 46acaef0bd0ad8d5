import { describe, expect, test } from 'vitest';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';

const reel = (left: string): Change => [
  'content/shop.yaml',
  'red-8: { reels: [30 ft] }',
  `red-8: { reels: [${left}] }`,
];
const feedOf = (...changes: readonly Change[]) => byId(smallPlan(...changes).plan.power.conductors, 'feed');

// The feed takes 4.11 m; 8 AWG at 105 C carries 80 A x 0.85 in an engine space (33 CFR 183.425), its fuse is 60 A.
describe('a conductor that is thicker since a reel is too short', () => {
  test('names the thinner one that carries its fuse', () => {
    expect(feedOf(reel('1 ft'))).toMatchObject({
      ...{ size: { label: '4 AWG' }, shortOf: { part: 'red-8', size: { label: '8 AWG' } } },
    });
  });

  test('names none where its drop asks for the thicker one and the reel is long enough', () => {
    const feed = feedOf(reel('20 ft'));
    expect(feed.size.label).toBe('4 AWG');
    expect(feed).not.toHaveProperty('shortOf');
  });

  test('names none where its size is written', () => {
    const given = inJob('to: amp.B+', 'to: amp.B+, size: 4 AWG');
    expect(feedOf(reel('1 ft'), given)).not.toHaveProperty('shortOf');
  });
});
