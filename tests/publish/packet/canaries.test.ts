import { describe, expect, it } from 'vitest';
import { numberedFuses } from '../../../lib/draw/packet/numbered-fuses.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { canary, textsIn, withCanaries } from './canaries.ts';
import { packetOf, readyPlan, wordsOf } from './ready-plan.ts';

describe.each([
  ['sample', () => samplePlan()],
  ['van', () => fixedPlan('van-three-amps')],
])('the packet of a plan whose every text of the bench is marked: %s', (_, planOf) => {
  const plan = readyPlan(planOf());
  const marked = withCanaries(plan);

  it('is made of a plan in which many texts are', () => {
    expect(textsIn(marked).filter((text) => text.includes(canary)).length).toBeGreaterThan(50);
    expect(numberedFuses(marked).map(({ number, feeds }) => [number, feeds.map(({ id }) => id)])).toEqual(
      numberedFuses(plan).map(({ number, feeds }) => [number, feeds.map(({ id }) => id)]),
    );
  });

  it('has the mark nowhere in its file, and says what it says without marks', async () => {
    const html = await packetOf(marked);
    expect(html.toLowerCase()).not.toContain(canary);
    expect(wordsOf(html)).toBe(wordsOf(await packetOf(plan)));
  });
});
