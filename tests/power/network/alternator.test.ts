import { describe, expect, test } from 'vitest';
import type { Load } from '../../../lib/power/network/network-types.ts';
import { amp, battery, flow, rested, solve, wire } from './few-elements.ts';

describe('an alternator beside its battery', () => {
  const alternator = battery({ id: 'alternator', emfV: 14.4, ohm: 0, limitA: 100 });
  const draws = (givenA: number): Load => ({
    id: 'amp',
    kind: 'load',
    model: 'current',
    givenA,
    from: 'plus',
    to: 'minus',
  });

  test('holds its voltage within its limit, the battery charging behind its charging resistance', () => {
    const result = solve(alternator, rested, amp(1152));
    // 1,152 W at 14.4 V is 80 A; (14.4 V - 12.6 V) / 0.15 ohm is 12 A.
    expect(flow(result, 'alternator')).toMatchObject({ regime: 'set-point', dropV: 14.4 });
    expect(flow(result, 'alternator').currentA).toBeCloseTo(-92, 6);
    expect(flow(result, 'battery')).toMatchObject({ regime: 'charging' });
    expect(flow(result, 'battery').currentA).toBeCloseTo(12, 9);
    // What its voltage is above its emf, times its current.
    expect(flow(result, 'battery').heatW).toBeCloseTo(1.8 * 12, 9);
  });

  test.each([
    [0.121, 'charging', 1.8 / 0.121],
    [0.119, 'accepting', 15],
  ])('takes no more than it accepts: behind %d ohm it is %s', (chargeOhm, regime, currentA) => {
    const result = solve(alternator, { ...rested, chargeOhm, acceptA: 15 }, amp(1152));
    expect(flow(result, 'battery')).toMatchObject({ regime });
    expect(flow(result, 'battery').currentA).toBeCloseTo(currentA, 9);
  });

  test('takes what is left below the limit, and its voltage is what that asks for', () => {
    // 100 A less 94 A charge it with 6 A: 12.6 V + 6 A * 0.15 ohm.
    const result = solve(alternator, rested, draws(94));
    expect(flow(result, 'alternator')).toMatchObject({ regime: 'limited', currentA: -100 });
    expect(flow(result, 'battery').currentA).toBeCloseTo(6, 9);
    expect(flow(result, 'amp').dropV).toBeCloseTo(13.5, 9);
  });

  test.each([
    [99.9, 'charging', 12.6 + 0.1 * 0.15],
    [100.1, 'set-point', 12.6 - 0.1 * 0.005],
  ])('at a load of %d A past its vehicle the battery is %s', (givenA, regime, voltageV) => {
    const result = solve(alternator, rested, draws(givenA));
    expect(flow(result, 'battery')).toMatchObject({ regime });
    expect(flow(result, 'amp').dropV).toBeCloseTo(voltageV, 9);
  });

  test('and two batteries: both charge, both give, or one gives to the other', () => {
    const rear = { ...rested, id: 'rear', from: 'rear' };
    const link = wire('link', 'plus', 'rear', 0.01);
    const [both, gives] = [solve(alternator, rested, link, rear), solve(rested, link, rear, draws(30))];
    expect(flow(both, 'battery').currentA).toBeCloseTo(12, 9);
    expect(flow(both, 'rear').currentA).toBeCloseTo(1.8 / 0.16, 9);
    // 30 A shared as 15 mohm to 5 mohm.
    expect(flow(gives, 'battery').currentA).toBeCloseTo(-22.5, 9);
    expect(flow(gives, 'rear').currentA).toBeCloseTo(-7.5, 9);
    const low = solve(rested, link, { ...rear, emfV: 12.2 });
    // 0.4 V over 5 + 10 + 150 mohm.
    expect(flow(low, 'rear')).toMatchObject({ regime: 'charging' });
    expect(flow(low, 'rear').currentA).toBeCloseTo(0.4 / 0.165, 9);
  });

  test('past its limit leaves the rest to the battery, and the voltage falls', () => {
    const load: Load = { id: 'amp', kind: 'load', model: 'current', givenA: 140, from: 'plus', to: 'minus' };
    const result = solve(alternator, rested, load);
    expect(flow(result, 'alternator').currentA).toBe(-100);
    expect(flow(result, 'battery').currentA).toBeCloseTo(-40, 9);
    expect(flow(result, 'amp').dropV).toBeCloseTo(12.4, 9); // 12.6 V - 40 A * 5 mohm
  });

  test('takes nothing back from a battery above its set-point', () => {
    const result = solve({ ...alternator, emfV: 12 }, rested, amp(126));
    expect(flow(result, 'alternator')).toMatchObject({ currentA: 0, regime: 'accepting' });
    expect(flow(result, 'battery')).toMatchObject({ regime: 'set-point' });
  });

  // Charging, the battery would leave 13.8 V * (100 A - 1.2 V / 0.15 ohm) = 1,269.6 W at most. Giving behind 5 mohm it
  // holds V^2 - (12.6 + 0.5) V + 0.005 * 1,300 = 0.
  test('leaves a load that is too much while it charges to a battery that gives', () => {
    const result = solve(alternator, rested, amp(1300));
    expect(flow(result, 'alternator')).toMatchObject({ regime: 'limited', currentA: -100 });
    expect(flow(result, 'battery')).toMatchObject({ regime: 'set-point' });
    const voltageV = (13.1 + Math.sqrt(13.1 ** 2 - 4 * 6.5)) / 2;
    expect(flow(result, 'amp').dropV).toBeCloseTo(voltageV, 9);
    expect(flow(result, 'battery').currentA).toBeCloseTo((voltageV - 12.6) / 0.005, 6);
  });

  test('and more batteries than can be tried in every state share alike what is asked past the limit', () => {
    const bank = Array.from({ length: 9 }, (_, k) => ({ ...rested, id: `cell ${k}` }));
    const result = solve(alternator, ...bank, draws(145));
    expect(flow(result, 'alternator')).toMatchObject({ regime: 'limited', currentA: -100 });
    for (const { id } of bank) expect(flow(result, id).currentA).toBeCloseTo(-5, 9);
    expect(flow(result, 'amp').dropV).toBeCloseTo(12.6 - 5 * 0.005, 9);
  });

  test('gives way to a battery without resistance', () => {
    const result = solve(alternator, battery({ ohm: 0, emfV: 12.6 }), amp(126));
    expect(flow(result, 'alternator').currentA).toBe(-100);
    expect(flow(result, 'battery').currentA).toBeCloseTo(90, 9);
  });

  test('alone past its limit feeds nothing', () => {
    expect(solve(alternator, amp(1500)).state).toBe('no-solution');
    expect(solve(alternator, amp(1400)).state).toBe('solved');
  });
});
