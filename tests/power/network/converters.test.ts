import { describe, expect, test } from 'vitest';
import { converterElements } from '../../../lib/power/network/converters.ts';
import type { NetworkElement, TwoSlopeSource } from '../../../lib/power/network/network-types.ts';
import { amp, battery, faultKinds, flow, rested, solve, wire } from './few-elements.ts';

describe('a charger between two batteries', () => {
  const charger = (limitA: number, outputV = 14.4, efficiency = 0.9): readonly NetworkElement[] =>
    converterElements({
      id: 'charger',
      of: 'charger',
      input: { from: 'plus', to: 'minus' },
      output: { from: 'rear', to: 'minus' },
      outputV,
      limitA,
      efficiency,
    });
  const rear: TwoSlopeSource = { ...rested, id: 'rear', from: 'rear' };

  test('limited in voltage draws what it gives over its efficiency', () => {
    // (14.4 V - 12.6 V) / 0.15 ohm is 12 A; 172.8 W / 0.9 is 192 W from 12.6 V behind 5 mohm.
    const result = solve(rested, rear, ...charger(30));
    expect(flow(result, 'charger:out')).toMatchObject({ regime: 'set-point' });
    expect(flow(result, 'charger:out').currentA).toBeCloseTo(-12, 9);
    const inputV = (12.6 + Math.sqrt(12.6 ** 2 - 4 * 0.005 * 192)) / 2;
    expect(flow(result, 'charger:in').dropV).toBeCloseTo(inputV, 9);
    expect(flow(result, 'charger:in').currentA).toBeCloseTo(192 / inputV, 9);
  });

  test('limited in current gives that much, at the voltage that the battery then has', () => {
    const result = solve(rested, rear, ...charger(10));
    expect(flow(result, 'charger:out')).toMatchObject({ regime: 'limited', currentA: -10 });
    // 12.6 V + 10 A * 0.15 ohm; 141 W / 0.9.
    expect(flow(result, 'rear').dropV).toBeCloseTo(14.1, 9);
    expect(flow(result, 'charger:in').dropV * flow(result, 'charger:in').currentA).toBeCloseTo(141 / 0.9, 8);
  });

  test.each([
    [11.99, 'limited'],
    [12.01, 'set-point'],
  ])('with a limit of %d A, where the battery takes 12 A, is %s', (limitA, regime) => {
    expect(flow(solve(rested, rear, ...charger(limitA)), 'charger:out')).toMatchObject({ regime });
  });

  test('gives nothing to a battery above its voltage, and draws nothing then', () => {
    const result = solve(rested, rear, ...charger(30, 12.5));
    expect(flow(result, 'charger:out').currentA).toBe(0);
    expect(flow(result, 'charger:in').currentA).toBe(0);
  });

  test('asks for more than its feed can give, and is told', () => {
    // 12.6^2 / (4 * 0.5) = 79 W at most; it would draw 192 W.
    const weak = wire('thin', 'plus', 'far', 0.495);
    const fed = charger(30).map((one) => (one.id === 'charger:in' ? { ...one, from: 'far' } : one));
    const result = solve(rested, weak, rear, ...fed);
    expect(result.state === 'no-solution' && result.weakestLoad).toBe('charger:in');
  });

  // 30 A at 9 V are 270 W; over 0.5 they are 540 W, 60 A at 9 V: the battery gives the other 30 A, and 12 V fall by 3 V.
  // What it gives before it draws, 24 A at 14.4 V, would ask for 691 W, more than there is: 15^2 / (4 * 0.1) = 562 W.
  test('that feeds the bus it draws from settles where both sides agree', () => {
    const wasteful = charger(30, 14.4, 0.5).map((one) =>
      one.id === 'charger:out' ? { ...one, from: 'plus' } : one,
    );
    const result = solve(battery(), ...wasteful);
    expect(flow(result, 'charger:out')).toMatchObject({ regime: 'limited', currentA: -30 });
    expect(flow(result, 'charger:in').currentA).toBeCloseTo(60, 6);
    expect(flow(result, 'charger:in').dropV).toBeCloseTo(9, 8);
  });

  test('beside a load that cannot be fed is told of that load', () => {
    const result = solve(battery(), rear, ...charger(30), amp(400));
    expect(result.state === 'no-solution' && result.weakestLoad).toBe('amp');
    expect(result.state === 'no-solution' && result.greatestShare).toBeCloseTo(0.9, 4);
  });

  test('below its input cut-out is told as any device', () => {
    const [output, input] = converterElements({
      id: 'charger',
      of: 'charger',
      input: { from: 'plus', to: 'minus' },
      output: { from: 'rear', to: 'minus' },
      outputV: 14.4,
      limitA: 30,
      efficiency: 0.9,
      cutoutV: 12.55,
    });
    const result = solve(rested, rear, output, input);
    expect(result.state === 'cut-out' && result.cutOut).toEqual(['charger:in']);
  });

  test.each([
    ['feeds nothing that is there', { feeds: 'nobody' }],
    ['feeds a battery', { feeds: 'rear' }],
    ['gives more than it takes', { efficiency: 1.01 }],
  ])('that %s is a fault', (_, wrong) => {
    const elements = charger(30).map((one) => (one.id === 'charger:in' ? { ...one, ...wrong } : one));
    expect(faultKinds(solve(rested, rear, ...elements))).toEqual(['converter-impossible']);
  });

  test('of no efficiency is a fault', () => {
    expect(faultKinds(solve(rested, rear, ...charger(30, 14.4, 0)))).toEqual(['negative-value']);
    expect(solve(rested, rear, ...charger(30, 14.4, 1)).state).toBe('solved');
  });
});
