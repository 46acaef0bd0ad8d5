import { describe, expect, test } from 'vitest';
import { planJob } from '../../lib/plan/plan-job.ts';
import { judge } from '../../lib/rules/index.ts';
import { partsFile } from '../read/problem-case.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { byId, jobOf } from './plan-small-shop.ts';

const shopFile = 'content/shop.yaml';
const black =
  '  black-4: { kind: wire, title: "4 AWG black", size: 4 AWG, insulation: 105 C, colour: BK, for: [ground] }\n';
/** A ground reel of another resistance than its gauge tells, beside thicker ones. */
const reels = (how: string): Change => [
  partsFile,
  black,
  `${black.replace('105 C,', `105 C, ${how},`)}  black-2: { kind: wire, title: "2 AWG black", size: 2 AWG, insulation: 105 C, colour: BK, for: [ground] }\n`,
];
const widePorts: Change = [
  partsFile,
  'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
  'GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 1/0 AWG } }',
];
const stocked: Change = [shopFile, '  black-4: {', '  black-2: { reels: [30 ft] }\n  black-4: {'];

function groundOf(...changes: readonly Change[]) {
  const job = jobOf(smallShop(widePorts, ...changes));
  const { plan, remarks } = planJob(job);
  return {
    feed: byId(plan.power.conductors, 'feed').size.label,
    ground: byId(plan.power.conductors, 'ground'),
    cautions: judge(job, plan, remarks).filter(({ rule }) => rule === 'ground-under-feed'),
  };
}

describe('a ground is sized by the measure that it is judged by', () => {
  test('of the same copper: the gauge of its feed', () => {
    const { feed, ground, cautions } = groundOf();
    expect([feed, ground.size.label]).toEqual(['4 AWG', '4 AWG']);
    expect(ground.reason).toMatch(/at least as large as its feed feed/);
    expect(cautions).toEqual([]);
  });

  // 4 AWG has 0.815 mohm per metre of solid copper (ASTM B258); 1.2 is a cable sold short of copper.
  test.each([
    ['measured short of copper', 'measured: 1.2 mohm/m'],
    ['of copper-clad aluminium', 'material: copper-clad-aluminium'],
  ])('%s: the next gauge that conducts as well, and no caution is left', (_, how) => {
    const { feed, ground, cautions } = groundOf(reels(how), stocked);
    expect([feed, ground.size.label]).toEqual(['4 AWG', '2 AWG']);
    expect(cautions).toEqual([]);
  });

  test('a stranding that the shop sets counts for cables that are not measured', () => {
    // At 2 % a stranded 4 AWG has 0.831 mohm per metre and a measured 0.85 lies above it; at 10 % it has 0.897.
    const stranding: Change = [shopFile, 'stock:\n', 'rules: { stranding: 10 % }\nstock:\n'];
    expect(groundOf(reels('measured: 0.85 mohm/m'), stocked).ground.size.label).toBe('2 AWG');
    const lax = groundOf(reels('measured: 0.85 mohm/m'), stocked, stranding);
    expect(lax.ground.size.label).toBe('4 AWG');
    expect(lax.cautions).toEqual([]);
  });
});
