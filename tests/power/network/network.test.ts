import { describe, expect, test } from 'vitest';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import type { Load } from '../../../lib/power/network/network-types.ts';
import { amp, battery, flow, solve, wire } from './few-elements.ts';
import { greatestLoadShare } from './greatest-load.ts';

describe('a single constant-power load', () => {
  // By hand: V = (E + sqrt(E^2 - 4 P R)) / 2; 12 V, 0.1 ohm and 320 W give 8 V and 40 A.
  test('runs at the high-voltage root', () => {
    const result = solve(battery(), amp(320));
    expect(result.state).toBe('solved');
    expect(flow(result, 'amp').dropV).toBeCloseTo(8, 9);
    expect(flow(result, 'amp').currentA).toBeCloseTo(40, 9);
    expect(flow(result, 'battery').currentA).toBeCloseTo(-40, 9);
    expect(flow(result, 'battery').heatW).toBeCloseTo(160, 7);
  });

  // Maximum power transfer: E^2 / (4 R) = 360 W.
  test('collapses past the greatest power that the source can deliver', () => {
    expect(solve(battery(), amp(359.9)).state).toBe('solved');
    const past = solve(battery(), amp(400));
    expect(past.state === 'no-solution' && past.weakestLoad).toBe('amp');
    expect(past.state === 'no-solution' && past.greatestShare).toBeCloseTo(0.9, 4);
    expect(greatestLoadShare({ referenceNode: 'minus', elements: [battery(), amp(100)] })).toBeCloseTo(
      3.6,
      4,
    );
  });

  test('reports its cut-out by name', () => {
    const result = solve(battery(), { ...amp(320), cutoutV: 10.5 });
    expect(result.state === 'cut-out' && result.cutOut).toEqual(['amp']);
    expect(solve(battery(), { ...amp(320), cutoutV: 7.9 }).state).toBe('solved');
  });

  test('of the wrong polarity gets no voltage', () => {
    const result = solve(battery(), amp(10, 'minus', 'plus'));
    expect(result.state === 'no-solution' && result.weakestLoad).toBe('amp');
  });
});

describe('the other loads, by hand', () => {
  test('a square-law load is a resistance of Vr^2 / P', () => {
    // 144 W at 12 V is 1 ohm: 12 V * 1 / 1.1.
    const load: Load = { ...amp(0), model: 'square-law', powerW: 144, ratedV: 12 };
    expect(flow(solve(battery(), load), 'amp').dropV).toBeCloseTo(12 / 1.1, 9);
  });

  test('a constant current drops I * R', () => {
    const load: Load = { id: 'amp', kind: 'load', model: 'current', givenA: 20, from: 'plus', to: 'minus' };
    expect(flow(solve(battery(), load), 'amp').dropV).toBeCloseTo(10, 9);
    expect(solve(battery(), { ...load, givenA: 130 }).state).toBe('no-solution');
  });

  test('feed and ground drop stand apart', () => {
    const load: Load = { id: 'amp', kind: 'load', model: 'current', givenA: 10, from: 'a', to: 'b' };
    const result = solve(
      battery(),
      wire('feed', 'plus', 'a', 0.02),
      wire('ground', 'b', 'minus', 0.01),
      load,
    );
    expect(flow(result, 'feed').dropV).toBeCloseTo(0.2, 9);
    expect(flow(result, 'ground').dropV).toBeCloseTo(0.1, 9);
  });
});

describe('parts without resistance', () => {
  test('carry what the current law leaves to them', () => {
    const result = solve(
      battery(),
      wire('bus', 'plus', 'bus', 0),
      wire('stub', 'bus', 'stub', 0),
      { id: 'a', kind: 'load', model: 'current', givenA: 10, from: 'bus', to: 'minus' },
      { id: 'b', kind: 'load', model: 'current', givenA: 5, from: 'stub', to: 'minus' },
    );
    expect(flow(result, 'bus').currentA).toBeCloseTo(15, 9);
    expect(flow(result, 'stub').currentA).toBeCloseTo(5, 9);
  });
});

test('a network without a source has no voltage to give', () => {
  expect(solve(wire('a', 'plus', 'minus', 1), amp(10)).state).toBe('no-solution');
});

test('a load at a voltage next to none is refused, not given an endless current', () => {
  const result = solveNetwork({
    referenceNode: 'a',
    elements: [
      { id: 'battery', from: 'a', to: 'c', kind: 'source', model: 'emf', emfV: Number.MIN_VALUE, ohm: 0 },
      { id: 'amplifier', from: 'a', to: 'c', kind: 'load', model: 'power', powerW: 1e-12 },
    ],
  });
  expect(result.state).toBe('no-solution');
});
