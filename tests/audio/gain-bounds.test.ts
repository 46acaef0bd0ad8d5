import { describe, expect, it } from 'vitest';
import { gainTarget } from '../../lib/audio/gain.ts';
import { front, target } from './gain-target.ts';

describe('what the meter is to show', () => {
  it('is the target itself where that is a whole tenth, whatever binary fractions make of it', () => {
    // P = V^2 / R, turned round: every tenth of a volt from 0.5 to 80 V.
    for (let tenths = 5; tenths <= 800; tenths += 1) {
      const volts = tenths / 10;
      expect(target({ powerW: volts ** 2 / 4, supplyV: 14.4 }).meterV.value).toBe(volts);
    }
  });

  it('is a tenth less as soon as the target lies a thousandth under it', () => {
    expect(target({ powerW: 19.999 ** 2 / 4 }).meterV.value).toBe(19.9);
    expect(target({ powerW: 20.099 ** 2 / 4 }).meterV.value).toBe(20);
  });

  it('has its level in the working, never above nothing', () => {
    const inputs = (pathDb: number) => target({ pathDb }).meterV.trace.inputs;
    expect(inputs(-3)).toEqual([
      { name: 'V', value: 20, unit: 'V' },
      { name: 'L', value: -3, unit: 'dB' },
    ]);
    expect(inputs(6)[1]).toMatchObject({ name: 'L', value: 0 });
  });
});

describe('what the amplifier has', () => {
  it('is clipped at by its own power, whatever the speakers may get', () => {
    // By hand: 100 W into 4 ohm are 20 V, 25 W 10 V, 6.02 dB below; 25 W at 7.2 V of 14.4 V.
    const held = target({ speakersW: 25 });
    expect(held).toMatchObject({ clipV: { value: 20 }, targetV: { value: 10 }, targetPowerW: { value: 25 } });
    expect(held.toneMarginDb.value).toBeCloseTo(6.0206, 4);
    expect(target({ supplyV: 7.2 }).targetPowerW.value).toBeCloseTo(25, 9);
    expect(target({ supplyV: 7.2 }).clipV.value).toBeCloseTo(10, 9);
  });

  it('tells how far the tone stays below clipping, and by which voltages', () => {
    const { toneMarginDb } = target({ speakersW: 25 });
    expect(toneMarginDb.trace).toMatchObject({
      rule: 'clipping-margin-tone',
      unit: 'dB',
      inputs: [
        { name: 'Vclip', value: 20, unit: 'V' },
        { name: 'V', value: 10, unit: 'V' },
      ],
    });
  });

  it('gives a full-scale passage what the tone leaves, less the overlap', () => {
    // 6.0206 dB less 5 dB.
    const margin = target({ speakersW: 25, overlapDb: 5 }).fullScaleMarginDb;
    expect(margin.value).toBeCloseTo(1.0206, 4);
    expect(margin.trace.inputs).toEqual([
      { name: 'Vclip', value: 20, unit: 'V' },
      { name: 'V', value: 10, unit: 'V' },
      { name: 'overlap', value: 5, unit: 'dB' },
    ]);
  });
});

describe('the working', () => {
  it('names the power of both, and of the amplifier alone where nothing limits the speakers', () => {
    expect(target({ speakersW: 25 }).targetPowerW.trace.inputs).toEqual([
      { name: 'Pa', value: 100, unit: 'W' },
      { name: 'Ps', value: 25, unit: 'W' },
    ]);
    expect(target().targetPowerW.trace.inputs).toEqual([{ name: 'Pa', value: 100, unit: 'W' }]);
  });

  it('tells the power of the target from that at which it clips', () => {
    const { targetV, clipV } = target({ speakersW: 25 });
    expect(targetV.trace.inputs).toEqual([
      { name: 'P', value: 25, unit: 'W' },
      { name: 'R', value: 4, unit: 'ohm' },
    ]);
    expect(clipV.trace.inputs).toEqual([
      { name: 'Pa', value: 100, unit: 'W' },
      { name: 'R', value: 4, unit: 'ohm' },
    ]);
  });
});

const notNumbers = [Number.NaN, Number.POSITIVE_INFINITY];

describe('a gain is refused', () => {
  it.each(['loadOhm', 'powerW', 'speakersW', 'supplyV', 'ratedSupplyV'] as const)(
    'for a %s that is no number above nothing, though all others are sound',
    (name) => {
      for (const value of [0, -1, ...notNumbers])
        expect(gainTarget({ ...front, [name]: value })).toMatchObject({
          fault: 'gain-unclear',
          of: ['front'],
        });
    },
  );

  it('for an overlap below nothing, and for none of nothing', () => {
    for (const overlapDb of [-0.001, ...notNumbers])
      expect(gainTarget({ ...front, overlapDb })).toHaveProperty('fault');
    expect(gainTarget({ ...front, overlapDb: 0 })).not.toHaveProperty('fault');
  });

  it('for a path of no level', () => {
    for (const pathDb of [...notNumbers, Number.NEGATIVE_INFINITY])
      expect(gainTarget({ ...front, pathDb })).toHaveProperty('fault');
  });
});
