import { describe, expect, it } from 'vitest';
import { judgedPlan } from '../../lib/commands/shop/judged-plan.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { smallShop } from '../read/small-shop.ts';
import { byId, jobOf } from './plan-small-shop.ts';

/** The judged plan of the small shop with house rules of its own. */
function planWith(...rules: readonly string[]): BuildPlan {
  const written = `rules:\n${rules.map((rule) => `  ${rule}\n`).join('')}stock:`;
  return judgedPlan(
    jobOf(smallShop(...(rules.length > 0 ? [['content/shop.yaml', 'stock:', written] as const] : []))),
  );
}

const standard = planWith();

/** A rule as the shop writes it, what it decides, and what comes of it: each different from what the default gives. */
const decided: readonly (readonly [rule: string, read: (plan: BuildPlan) => unknown, comes: unknown])[] = [
  ['idle-class-d: 2 A', (plan) => plan.power.loads[0]?.idleA, 2],
  ['interrupt-to-650: 20 kA', (plan) => byId(plan.power.fuses, 'main-fuse').needsInterruptA, 20000],
  ['interrupt-large-bolt-in: 4 kA', (plan) => byId(plan.power.fuses, 'main-fuse').interruptA, 4000],
  // The lesser of bolt and rivet nut counts: 25 and 20 N m left alone.
  ['torque-m8: 18 N m', (plan) => byId(plan.wires, 'ground').ends[1].torqueNm, 18],
  ['torque-rivet-nut-m8: 15 N m', (plan) => byId(plan.wires, 'ground').ends[1].torqueNm, 15],
  [
    'shrink-over-insulation: 20 mm',
    (plan) => {
      const [{ shrink, stripM }] = byId(plan.wires, 'tail').ends;
      return Number(((shrink?.lengthM ?? 0) - (stripM ?? 0)).toFixed(6));
    },
    0.02,
  ],
  ['gain-overlap: 5 dB', (plan) => byId(plan.audio.channels, 'amp.1').gain?.toneLevelDb, -5],
  ['check-in-rested-most: 12.9 V', (plan) => byId(plan.measurements, 'battery-rest').greatest, 12.9],
  ['check-in-rested: 12.5 V', (plan) => byId(plan.measurements, 'battery-rest').least, 12.5],
  ['check-in-charging-most: 15 V', (plan) => byId(plan.measurements, 'battery-charging').greatest, 15],
  ['check-in-ripple: 300 mV', (plan) => byId(plan.measurements, 'battery-ripple').greatest, 0.3],
  [
    'joint-drop-limit: 1 mV',
    (plan) => plan.findings.some(({ rule, limit }) => rule === 'joint-drop' && limit === 0.001),
    true,
  ],
  [
    'charge-lead-drop: 1 mV',
    (plan) => plan.findings.some(({ rule, limit }) => rule === 'charge-lead-drop' && limit === 0.001),
    true,
  ],
  [
    'charging-share: 10 %',
    (plan) =>
      plan.findings.some(({ rule, source }) => rule === 'charging-short' && /shop's own/.test(source)),
    true,
  ],
  ['lugs-on-stud: 1', (plan) => plan.findings.some(({ rule }) => rule === 'port-refuses-conductor'), true],
];

describe('a house rule that the shop sets', () => {
  it.each(decided)('%s decides', (rule, read, comes) => {
    expect(read(standard)).not.toEqual(comes);
    expect(read(planWith(rule))).toEqual(comes);
  });

  it('of the gain overlap lowers the tone and the margin of a full-scale passage, not the voltage on the meter', () => {
    const gainOf = (plan: BuildPlan) => byId(plan.audio.channels, 'amp.1');
    const [flat, lapped] = [gainOf(standard), gainOf(planWith('gain-overlap: 5 dB'))];
    expect(lapped.gainVoltageV).toBe(flat.gainVoltageV);
    expect(lapped.gain?.toneMarginDb).toBe(flat.gain?.toneMarginDb);
    const margins = [flat, lapped].map(({ gain }) => gain?.fullScaleMarginDb ?? Number.NaN);
    expect((margins[0] ?? 0) - (margins[1] ?? 0)).toBeCloseTo(5, 9);
    const clips = ({ findings }: BuildPlan) => findings.filter(({ rule }) => rule === 'full-scale-clips');
    expect(clips(standard)).toEqual([]);
    expect(clips(planWith('gain-overlap: 5 dB'))).toHaveLength(1);
  });

  it('of a gain overlap past 20 dB stops the channel that it leaves without a voltage', () => {
    const plan = planWith('gain-overlap: 40 dB');
    const stops = plan.findings.filter(({ level }) => level === 'stop').map(({ rule }) => rule);
    expect(stops).toContain('overlap-unclear');
  });

  it('stands in the plan with its default beside it', () => {
    const { rules } = planWith('joint-drop-limit: 30 mV');
    expect(rules.find(({ name }) => name === 'joint-drop-limit')).toMatchObject({
      value: 0.03,
      unit: 'V',
      given: true,
      standard: 0.05,
      mark: 'cp',
    });
    expect(rules.filter(({ given }) => given)).toHaveLength(1);
  });
});
