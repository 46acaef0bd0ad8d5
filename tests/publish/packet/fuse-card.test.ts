import { describe, expect, it } from 'vitest';
import { numberedFuses } from '../../../lib/draw/packet/numbered-fuses.ts';
import { ratingText } from '../../../lib/draw/power/feed-words.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';
import { secrets } from '../sample/sample-site.ts';
import { packetOf, readyPlan } from './ready-plan.ts';

const plan = readyPlan(fixedPlan('van-three-amps'));
const cardOf = async (one: typeof plan) =>
  /<section id="card"[\s\S]*?<\/section>/.exec(await packetOf(one))?.[0] ?? '';

describe('a card for the glove box', () => {
  it('has every fuse with its number, its rating and what it feeds, and nothing of the owner', async () => {
    const card = await cardOf(plan);
    const fuses = numberedFuses(plan);
    expect(fuses.length).toBeGreaterThan(0);
    for (const { number, fuse } of fuses) {
      expect(card).toContain(`<span class="ring">${number}</span>`);
      expect(card).toContain(ratingText(fuse).text);
    }
    expect(card.match(/<tr>/g)).toHaveLength(fuses.length + 1);
    for (const secret of Object.values(secrets)) expect(card).not.toContain(secret);
  });

  it('is left out where no fuse was put in', async () => {
    expect(await cardOf({ ...plan, power: { ...plan.power, fuses: [] } })).toBe('');
  });
});
