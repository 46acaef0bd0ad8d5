import { describe, expect, test } from 'vitest';
import {
  type AmplifierSupply,
  amplifierCurrents,
  loadElement,
} from '../../../lib/power/network/load-current.ts';
import { outsideCheck } from '../../outside-check.ts';
import { redone } from '../../publish/workings/redo.ts';
import { usualEfficiency } from '../usual-rules.ts';

const byHand = outsideCheck('loads-by-hand');

const amplifier: AmplifierSupply = {
  fusesA: [30, 30],
  ratedPowerW: 600,
  ratedV: 14.4,
  efficiency: usualEfficiency('class-d'),
  supply: 'regulated',
  musicDuty: 1 / 8,
};

describe('current of an amplifier', () => {
  test('is its fuse sum at full rating', () => {
    const currents = amplifierCurrents(amplifier, 13.8);
    if (!('fullRatingA' in currents)) throw new Error('no current');
    expect(byHand.differs(currents.fullRatingA.value, 30 + 30)).toBe(60);
    expect(currents.fullRatingA.trace.mark).toBe('cp');
  });

  test('at rated power is power over efficiency and voltage', () => {
    // Class D 0.75 (common practice): 600 / 0.75 = 800 W in; at 12.5 V 64 A.
    const currents = amplifierCurrents(amplifier, 12.5);
    expect('ratedPowerA' in currents && byHand.differs(currents.ratedPowerA.value, 64)).toBe(64);
  });

  test('falls with the voltage where the supply is not regulated', () => {
    // 800 W at 14.4 V; at 7.2 V a quarter of it, 200 W, 27.78 A.
    const result = amplifierCurrents({ ...amplifier, supply: 'unregulated' }, 7.2);
    expect('ratedPowerA' in result && byHand.differs(result.ratedPowerA.value, 200 / 7.2)).toBeCloseTo(
      200 / 7.2,
      9,
    );
    const constant = amplifierCurrents({ ...amplifier, supply: 'constant-current' }, 7.2);
    expect('ratedPowerA' in constant && constant.ratedPowerA.value).toBeCloseTo(800 / 14.4, 9);
  });

  test('with music takes an eighth at its own efficiency, a third with heavy bass', () => {
    // 75 W / 0.55 / 12 V = 11.36 A; 200 W at 0.55 + 0.2 * (5 / 21) = 0.5976: 27.888 A.
    const music = amplifierCurrents(amplifier, 12);
    expect('musicA' in music && byHand.differs(music.musicA.value, 75 / 0.55 / 12)).toBeCloseTo(11.3636, 4);
    const bass = amplifierCurrents({ ...amplifier, musicDuty: 1 / 3 }, 12);
    expect('musicA' in bass && bass.musicA.value).toBeCloseTo(27.888, 3);
  });

  test('with music is what its maker measured at an eighth of rated power, whatever its class is said to reach', () => {
    const musicA = (more: Partial<AmplifierSupply>, atV = 14.4) => {
      const told = { ...amplifier, efficiency: { ...amplifier.efficiency, eighthA: 11 } };
      const currents = amplifierCurrents({ ...told, ...more }, atV);
      return 'musicA' in currents ? currents.musicA.value : null;
    };
    expect(musicA({})).toBeCloseTo(11, 9);
    // Regulated, it takes the same 158.4 W at 12 V.
    expect(musicA({}, 12)).toBeCloseTo(158.4 / 12, 9);
    // Efficiency 75 W / 158.4 W = 0.4735 at an eighth, 0.75 in full; at a third 0.4735 + 0.2765 * 5 / 21 = 0.5393.
    expect(musicA({ musicDuty: 1 / 3 })).toBeCloseTo(200 / 0.5393 / 14.4, 2);
    // Never less than at full efficiency gives: 150 W of a louder load take at least 200 W.
    expect(musicA({ ratedPowerW: 1200 })).toBeCloseTo(200 / 14.4, 9);
  });

  test('with music never falls under the idle current', () => {
    expect(amplifierCurrents({ ...amplifier, ratedPowerW: 20 }, 12)).toMatchObject({
      musicA: { value: 1 },
    });
  });

  test('can be redone from its working, at rated power too, where no idle current holds it up', () => {
    for (const voltageV of [12, 13.8]) {
      const currents = amplifierCurrents({ ...amplifier, ratedPowerW: 20 }, voltageV);
      if (!('musicA' in currents)) throw new Error('no current');
      for (const { value, trace } of [currents.ratedPowerA, currents.musicA])
        expect(redone(trace)).toBeCloseTo(value, 9);
      expect(currents.ratedPowerA.trace.formula).toBe('I = d * P * k / (eta * V)');
      expect(currents.musicA.trace.formula).toBe('I = d * P * k / (eta * V), at least Iidle');
    }
    // 2 W over 0.75 and 12 V are 0.22 A, though it takes 1 A without a signal.
    const small = amplifierCurrents({ ...amplifier, ratedPowerW: 2 }, 12);
    expect('ratedPowerA' in small && small.ratedPowerA.value).toBeCloseTo(2 / 0.75 / 12, 9);
  });

  test('is no load of the network where it takes nothing, or has no voltage', () => {
    const device = { id: 'amp', from: 'plus', to: 'minus', supply: 'regulated' } as const;
    expect(loadElement({ ...device, currentA: 10, voltageV: 12 })).toMatchObject({ powerW: 120 });
    expect(loadElement({ ...device, currentA: 0, voltageV: 12 })).toBeNull();
    expect(loadElement({ ...device, currentA: 10, voltageV: 0 })).toBeNull();
  });

  test('tells bad input', () => {
    expect(amplifierCurrents(amplifier, 0)).toHaveProperty('fault');
    expect(amplifierCurrents({ ...amplifier, ratedPowerW: -5 }, 12)).toHaveProperty('fault');
    expect(
      amplifierCurrents({ ...amplifier, efficiency: { full: 1.2, eighth: 0.5, idleA: 1 } }, 12),
    ).toHaveProperty('fault');
  });
});

test('a load takes its current at its voltage, whatever its supply', () => {
  const device = { id: 'amp', from: 'a', to: 'b', currentA: 50, voltageV: 12, cutoutV: 10 };
  expect(loadElement({ ...device, supply: 'regulated' })).toMatchObject({
    model: 'power',
    powerW: 600,
    cutoutV: 10,
  });
  expect(loadElement({ ...device, supply: 'unregulated' })).toMatchObject({
    model: 'square-law',
    powerW: 600,
    ratedV: 12,
  });
  expect(loadElement({ ...device, supply: 'constant-current' })).toMatchObject({
    model: 'current',
    givenA: 50,
  });
  expect(loadElement({ ...device, supply: 'resistance' })).toMatchObject({ model: 'resistance', ohm: 0.24 });
  expect(loadElement({ ...device, supply: 'regulated', currentA: 0 })).toBeNull();
});
