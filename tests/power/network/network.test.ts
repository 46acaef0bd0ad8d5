import { describe, expect, test } from 'vitest';
import { converterElements } from '../../../lib/power/network/converters.ts';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import type {
  EmfSource,
  Load,
  NetworkElement,
  NetworkResult,
  PassiveElement,
  TwoSlopeSource,
} from '../../../lib/power/network/network-types.ts';
import { greatestLoadShare } from './greatest-load.ts';

const battery = (more: Partial<EmfSource> = {}): EmfSource => ({
  id: 'battery',
  kind: 'source',
  model: 'emf',
  emfV: 12,
  ohm: 0.1,
  from: 'plus',
  to: 'minus',
  ...more,
});
const wire = (id: string, from: string, to: string, ohm: number): PassiveElement => ({
  id,
  kind: 'conductor',
  model: 'resistance',
  from,
  to,
  ohm,
});
const amp = (powerW: number, from = 'plus', to = 'minus', id = 'amp'): Load => ({
  id,
  kind: 'load',
  model: 'power',
  powerW,
  from,
  to,
});
const solve = (...elements: NetworkElement[]) => solveNetwork({ referenceNode: 'minus', elements });

function flow(result: NetworkResult, id: string) {
  if (result.state === 'no-solution' || result.state === 'fault') throw new Error(JSON.stringify(result));
  const found = result.elements.find((element) => element.id === id);
  if (!found) throw new Error(`no element ${id}`);
  return found;
}
const faultKinds = (result: NetworkResult) =>
  result.state === 'fault' ? result.faults.map(({ fault }) => fault.replace('network-', '')) : result.state;

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

const rested: TwoSlopeSource = {
  id: 'battery',
  kind: 'source',
  model: 'two-slope',
  emfV: 12.6,
  ohm: 0.005,
  chargeOhm: 0.15,
  acceptA: 20,
  from: 'plus',
  to: 'minus',
};

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

describe('a network that cannot be computed names its fault', () => {
  test.each<[string, string, NetworkElement[]]>([
    ['a device without a ground', 'floating', [battery(), amp(10, 'plus', 'nowhere')]],
    ['a device without a feed', 'floating', [battery(), amp(10, 'nowhere', 'minus')]],
    [
      'a loop without resistance',
      'zero-resistance-loop',
      [battery(), wire('a', 'plus', 'x', 0), wire('b', 'x', 'plus', 0)],
    ],
    [
      'stiff sources in parallel',
      'stiff-sources-in-parallel',
      [battery({ ohm: 0 }), battery({ id: 'second', ohm: 0, emfV: 13 })],
    ],
    [
      'equal stiff sources',
      'stiff-sources-in-parallel',
      [battery({ ohm: 0 }), battery({ id: 'second', ohm: 0 })],
    ],
    [
      'a shorted alternator',
      'short-circuit',
      [battery(), battery({ id: 'alternator', ohm: 0, limitA: 100 }), wire('short', 'plus', 'minus', 0)],
    ],
    ['a limit under zero', 'negative-value', [battery({ limitA: -1 }), amp(10)]],
    ['an emf under zero', 'negative-value', [battery({ emfV: -12 }), amp(10)]],
    ['a source of a resistance under zero', 'negative-value', [battery({ ohm: -0.1 }), amp(10)]],
    ['a shorted stiff source', 'short-circuit', [battery({ ohm: 0 }), wire('short', 'plus', 'minus', 0)]],
    ['a negative resistance', 'negative-value', [battery(), wire('a', 'plus', 'x', -1), amp(10, 'x')]],
    [
      'a load of no ohms',
      'negative-value',
      [battery(), { id: 'r', kind: 'load', model: 'resistance', ohm: 0, from: 'plus', to: 'minus' }],
    ],
    ['no number', 'not-a-number', [battery({ emfV: Number.NaN }), amp(10)]],
    ['an endless number', 'not-a-number', [battery(), amp(Number.POSITIVE_INFINITY)]],
    ['a conductor back to its own start', 'joined-to-itself', [battery(), wire('a', 'plus', 'plus', 1)]],
    ['an id used twice', 'duplicate-id', [battery(), wire('a', 'plus', 'x', 1), wire('a', 'plus', 'y', 1)]],
  ])('%s', (_what, kind, elements) => {
    expect(faultKinds(solve(...elements))).toContain(kind);
  });

  test('names the elements of the loop', () => {
    const result = solve(
      battery(),
      wire('a', 'plus', 'x', 0),
      wire('b', 'x', 'y', 0),
      wire('c', 'y', 'plus', 0),
    );
    expect(result.state === 'fault' && result.faults[0]?.of.toSorted()).toEqual(['a', 'b', 'c']);
  });

  test('an unknown node', () => {
    const network = {
      referenceNode: 'minus',
      elements: [battery(), amp(10, 'plux')],
      nodes: ['plus', 'minus'],
    };
    expect(faultKinds(solveNetwork(network))).toContain('unknown-node');
    expect(faultKinds(solveNetwork({ referenceNode: 'earth', elements: [battery()] }))).toContain(
      'unknown-node',
    );
    expect(faultKinds(solveNetwork({ referenceNode: 'earth', elements: [] }))).toContain('unknown-node');
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
