import { expect, it } from 'vitest';
import { sheetSections } from '../../../lib/publish/page/sheet-sections.ts';
import { faultSteps } from '../../../lib/publish/words/vehicle-card-words.ts';
import { smallPlan } from '../plan-small-shop.ts';

/** The small shop with rules of its own for what steps and checks ask for. */
const own = smallPlan([
  'content/shop.yaml',
  'stock:\n',
  'rules: { continuity-ground: 0.2 ohm, continuity-wire: 2 ohm, gain-under: 8 %, key-off-wait: 45 min }\nstock:\n',
]).plan;
const usual = smallPlan().plan;

/** Everything that is said of a plan, in steps, record and sheets. */
const said = (plan: typeof own): string =>
  JSON.stringify([plan.steps, plan.measurements, faultSteps(plan), sheetSections(plan, 'shop')]).replaceAll(
    '\u00a0',
    ' ',
  );

it("steps, record, bench test and survey ask for what the shop's rules say, else for the table's values", () => {
  const [byShop, byTable] = [said(own), said(usual)];
  for (const [shop, table] of [
    ['under 0.2 ohm', 'under 0.1 ohm'],
    ['2 ohm end to end', '1 ohm end to end'],
    ['up to 8 % less', 'up to 5 % less'],
    ['45 min or more after locking', '30 min or more after locking'],
  ] as const) {
    expect(byShop).toContain(shop);
    expect(byShop).not.toContain(table);
    expect(byTable).toContain(table);
    expect(byTable).not.toContain(shop);
  }
});

it("a gain may read as far below its voltage as the shop's rule says, and no further", () => {
  for (const [plan, share] of [
    [own, 0.92],
    [usual, 0.95],
  ] as const) {
    const gains = plan.measurements.filter(({ id, predicted }) => id.endsWith('.gain') && predicted !== null);
    expect(gains.length).toBeGreaterThan(0);
    for (const { least, greatest, predicted } of gains) {
      expect(least).toBeCloseTo(share * (predicted ?? 0), 12);
      expect(greatest).toBe(predicted);
    }
  }
});
