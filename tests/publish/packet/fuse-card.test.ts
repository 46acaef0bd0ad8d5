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
    const own = plan.items.filter(({ ownFuses }) => ownFuses !== undefined);
    expect(own.length).toBeGreaterThan(0);
    expect(card.match(/<tr>/g)).toHaveLength(fuses.length + own.length + 1);
    for (const secret of Object.values(secrets)) expect(card).not.toContain(secret);
  });

  it('has the fuses that devices bring themselves: of several their sum, of one of the vehicle where it may sit', async () => {
    const withOwn = (id: string, ownFuses: { count: number; ratingA: number }) => ({
      ...plan,
      items: plan.items.map((item) =>
        item.id === id ? { ...item, ownFuses } : { ...item, ownFuses: undefined },
      ),
    });
    const [amp] = plan.items.filter(({ kind }) => kind === 'amplifier');
    const text = async (count: number) =>
      (await cardOf(withOwn(amp?.id ?? '', { count, ratingA: 60 })))
        .replaceAll(/<[^>]*>/g, ' ')
        .replaceAll(/\s+/g, ' ');
    expect(await text(2)).toMatch(/own as marked .* In it, 2 fuses of 60 A together: /);
    expect(await text(1)).toMatch(/own 60 A .* In it: /);
    expect(await text(0)).toMatch(/own 60 A .* In it or before it: /);
  });

  it('has the fuse of a tap in a slot of the vehicle, and tells of the one of the slot beside it', async () => {
    const [{ holder } = { holder: undefined }] = numberedFuses(plan);
    const tapped = {
      ...plan,
      items: plan.items.map((item) =>
        item.id === holder?.id ? { ...item, origin: 'vehicle' as const, tap: true as const } : item,
      ),
    };
    expect(numberedFuses(tapped)).toHaveLength(numberedFuses(plan).length);
    expect(await cardOf(tapped)).toContain('beside it sits the fuse of the slot');
    expect(await cardOf(plan)).not.toContain('fuse of the slot');
  });

  it('is left out where no fuse was put in', async () => {
    expect(await cardOf({ ...plan, power: { ...plan.power, fuses: [] } })).toBe('');
  });
});
