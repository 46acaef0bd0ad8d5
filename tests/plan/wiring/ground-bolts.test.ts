import { describe, expect, test } from 'vitest';
import { groundBolts } from '../../../lib/plan/wiring/ground-bolts.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobOf, smallPlan } from '../plan-small-shop.ts';
import { inParts, inVehicle } from '../shop-changes.ts';

const reel = '  bolt-a: { kind: fixing,';
const fixing = (id: string, facts: string) => `  ${id}: { kind: fixing, title: "${id}", ${facts} }\n`;
const bolt = (id: string, length: string) => fixing(id, `form: bolt, thread: M8, length: ${length}`);
const teeth = fixing('teeth', 'form: washer, thread: M8, serrated: true, thickness: 1.5 mm');
const plain = fixing('plain', 'form: washer, thread: M8, thickness: 1.5 mm');
const withParts = (...parts: readonly string[]): Change => inParts(reel, `${parts.join('')}${reel}`);
const shelved = (...ids: readonly string[]): Change => [
  'content/shop.yaml',
  'stock:\n',
  `stock:\n${ids.map((id) => `  ${id}: { pieces: 5 }\n`).join('')}`,
];
const chosen = (...changes: readonly Change[]) => groundBolts(jobOf(smallShop(...changes)))[0];

// One lug of 3 mm, a washer of 1.5 mm and 8 mm of thread (common practice, no source): 12.5 mm at least.
describe('the bolt of a ground point', () => {
  test('has the thread of the point and holds palm, washer and one diameter of thread, no less', () => {
    expect(chosen(withParts(bolt('short', '12.4 mm'), bolt('enough', '12.5 mm'), teeth))).toMatchObject({
      ...{ point: 'cargo', bolt: 'enough', washer: 'teeth' },
    });
    expect(chosen(withParts(bolt('short', '12.4 mm'), teeth))?.bolt).toBeNull();
    expect(
      chosen(withParts(fixing('thin', 'form: bolt, thread: M6, length: 30 mm'), teeth))?.bolt,
    ).toBeNull();
  });

  test('is one of the shelf before a shorter one that is not, and the shortest of the shelf', () => {
    const all = withParts(bolt('bought', '16 mm'), bolt('long', '40 mm'), bolt('there', '25 mm'), teeth);
    expect(chosen(all, shelved('there', 'long'))?.bolt).toBe('there');
    expect(chosen(all)?.bolt).toBe('bought');
  });

  test('comes with a washer that bites; a plain one is none', () => {
    expect(chosen(withParts(plain))?.washer).toBeNull();
    expect(chosen(withParts(plain, teeth))?.washer).toBe('teeth');
  });

  test("is the vehicle's own where its file says so", () => {
    const own = inVehicle('cargo: { zone: cargo,', 'cargo: { bolt: own, zone: cargo,');
    expect(chosen(own, withParts(bolt('there', '25 mm'), teeth))).toMatchObject({
      ...{ own: true, bolt: null, washer: 'teeth' },
    });
  });
});

describe('what fastens a ground point of another kind', () => {
  const at = (insert: string) =>
    inVehicle('cargo: { zone: cargo,', `cargo: { insert: ${insert}, zone: cargo,`);
  const nut = fixing('nut', 'form: nut, thread: M8');
  const parts = withParts(bolt('enough', '12.5 mm'), bolt('through', '15.5 mm'), nut, teeth);

  test('is a nut and a washer over a stud, and no bolt', () => {
    expect(chosen(at('stud'), parts)).toMatchObject({ by: 'nut', bolt: null, nut: 'nut', washer: 'teeth' });
    expect(chosen(at('welded'), parts)).toMatchObject({ by: 'bolt', bolt: 'enough', nut: null });
  });

  // With 3 mm of panel (common practice, no source), 15.5 mm at least.
  test('is a bolt that passes the panel and its nut where it goes through', () => {
    expect(chosen(at('through'), parts)).toMatchObject({ by: 'bolt-and-nut', bolt: 'through', nut: 'nut' });
  });

  test('is on the pick list and in its step, to be ordered where the catalogue has none', () => {
    const { plan } = smallPlan(at('stud'), withParts(teeth));
    expect(plan.pick.find(({ part }) => part === 'ground-nut-m8')).toMatchObject({ short: 1 });
    expect(plan.pick.some(({ part }) => part.startsWith('ground-bolt'))).toBe(false);
    expect(plan.steps.find(({ id }) => id === 'connect-ground')?.text).toContain(
      'a nut M8 that is to be ordered over the stud and teeth',
    );
  });
});

describe('what a step asks for at a ground point', () => {
  const pickOf = (...changes: readonly Change[]) => {
    const { plan } = smallPlan(...changes);
    const step = plan.steps.find(({ id }) => id === 'connect-ground');
    return { pick: new Map(plan.pick.map(({ part, short }) => [part, short])), text: step?.text };
  };

  test('is on the pick list, taken from the shelf', () => {
    const { pick, text } = pickOf(withParts(bolt('there', '25 mm'), teeth), shelved('there', 'teeth'));
    expect(text).toContain('cargo with there and teeth');
    expect([pick.get('there'), pick.get('teeth')]).toEqual([0, 0]);
  });

  test('is to be ordered where the catalogue lacks it', () => {
    const { pick, text } = pickOf();
    expect(text).toContain('a bolt M8 that is to be ordered and a serrated washer M8 that is to be ordered');
    expect([pick.get('ground-bolt-m8'), pick.get('ground-washer-m8')]).toEqual([1, 1]);
  });

  test("is no bolt where the vehicle's own is used again", () => {
    const { pick, text } = pickOf(inVehicle('cargo: { zone: cargo,', 'cargo: { bolt: own, zone: cargo,'));
    expect(text).toContain("cargo with the vehicle's own bolt and");
    expect(pick.has('ground-bolt-m8')).toBe(false);
  });
});
