import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gainTarget } from '../../lib/audio/gain.ts';
import { inputMatch } from '../../lib/audio/input-sensitivity.ts';
import { outsideCheck } from '../outside-check.ts';
import { front, target } from './gain-target.ts';

const byHand = outsideCheck('audio-by-hand');

describe('the gain target', () => {
  // By hand: 100 W into 4 ohm is 20 V, 75 W 17.32 V, 1000 W into 1 ohm 31.62 V.
  it('is the square root of power times load, read rounded down', () => {
    expect(target()).toMatchObject({ targetV: { value: 20 }, meterV: { value: 20 } });
    expect(byHand.differs(target({ powerW: 75 }).targetV.value, Math.sqrt(300))).toBeCloseTo(17.3205, 4);
    expect(target({ powerW: 75 }).meterV.value).toBe(17.3);
    expect(target({ powerW: 1000, loadOhm: 1 }).meterV.value).toBe(31.6);
  });

  it('falls with the supply of an unregulated amplifier, and never rises above its rating', () => {
    // By hand: 20 V * 12.6 / 14.4 = 17.5 V.
    expect(byHand.differs(target({ supplyV: 12.6 }).targetV.value, 17.5)).toBeCloseTo(17.5, 9);
    expect(target({ supplyV: 12.6, regulated: true }).targetV.value).toBe(20);
    expect(target({ supplyV: 15 }).targetV.value).toBe(20);
  });

  it('stays within what the speakers may get, which leaves margin before clipping', () => {
    // By hand: 50 of 100 W is 14.14 V, 3.0103 dB below 20 V.
    const found = target({ speakersW: 50 });
    expect(found.targetV.value).toBeCloseTo(14.1421, 4);
    expect(byHand.differs(found.toneMarginDb.value, 10 * Math.log10(2))).toBeCloseTo(3.0103, 4);
    expect(target({ speakersW: 400 }).targetPowerW.value).toBe(100);
  });

  it('is so far lower as its speakers are to play below others', () => {
    // By hand: 20 dB is a tenth of the voltage, a hundredth of the power; the clipping voltage stays.
    const found = target({ levelDb: -20 });
    expect(byHand.differs(found.targetV.value, 2)).toBeCloseTo(2, 9);
    expect(found.targetPowerW.value).toBeCloseTo(1, 9);
    expect(found.clipV.value).toBe(20);
    expect(target({ levelDb: -20, speakersW: 50 }).targetPowerW.value).toBeCloseTo(0.5, 9);
    expect(target({ levelDb: 0 })).toEqual(target());
  });

  it('tells that an overlap lets full-scale passages clip', () => {
    const found = target({ overlapDb: 5 });
    expect(found).toMatchObject({
      toneMarginDb: { value: 0 },
      fullScaleMarginDb: { value: -5 },
      meterV: { value: 20 },
    });
  });

  it('reads less behind filters that stay on, and no more with a boost', () => {
    // By hand: 6.0206 dB is half the voltage.
    expect(target({ pathDb: -6.0206 }).meterV.value).toBeCloseTo(9.9, 9);
    expect(target({ pathDb: 6 }).meterV.value).toBe(20);
  });

  it('never asks for more than the amplifier has or the speakers bear', () => {
    const watts = fc.double({ min: 5, max: 3000, noNaN: true });
    const volts = fc.double({ min: 9, max: 16, noNaN: true });
    fc.assert(
      fc.property(watts, watts, volts, fc.constantFrom(1, 2, 4, 8), (powerW, speakersW, supplyV, loadOhm) => {
        const found = target({ powerW, speakersW, supplyV, loadOhm });
        const watt = found.meterV.value ** 2 / loadOhm;
        expect(watt).toBeLessThanOrEqual(Math.min(powerW, speakersW) * (1 + 1e-9));
        expect(found.toneMarginDb.value).toBeGreaterThanOrEqual(0);
        expect(found.targetV.value - found.meterV.value).toBeLessThan(0.1 + 1e-9);
      }),
    );
  });

  it.each([
    { loadOhm: 0 },
    { powerW: Number.NaN },
    { speakersW: 0 },
    { supplyV: 0 },
    { overlapDb: -3 },
    { pathDb: Number.NaN },
    { levelDb: 3 },
  ])('is refused for %o', (change) => {
    expect(gainTarget({ ...front, ...change })).toMatchObject({
      fault: 'gain-unclear',
      of: ['front'],
    });
  });
});

describe('a source at an input', () => {
  const at = (sourceV: number) => inputMatch({ input: 'dsp.IN', sourceV, leastV: 1, greatestV: 4 });

  it('is within, too low or too high', () => {
    expect(at(2)).toMatchObject({ verdict: 'within' });
    expect(at(0.5)).toMatchObject({ verdict: 'too-low' });
    expect(at(5)).toMatchObject({ verdict: 'too-high' });
    expect(at(4)).toMatchObject({ verdict: 'within' });
  });

  // Twice the voltage is 6.0206 dB.
  it('has 6.0206 dB of headroom at half the limit', () => {
    expect(at(2)).toMatchObject({
      headroomDb: { value: expect.closeTo(6.0206, 4) },
      reserveDb: { value: expect.closeTo(6.0206, 4) },
    });
  });

  it('is held against its limit alone where its maker does not tell the least', () => {
    const untold = (sourceV: number) => inputMatch({ input: 'dsp.IN', sourceV, leastV: null, greatestV: 4 });
    expect(untold(4.01)).toMatchObject({ verdict: 'too-high', reserveDb: null });
    expect(untold(2)).toMatchObject({
      verdict: 'unknown',
      headroomDb: { value: expect.closeTo(6.0206, 4) },
      reserveDb: null,
    });
    expect(untold(4)).toMatchObject({ verdict: 'unknown' });
  });

  it('is refused without figures', () => {
    expect(at(0)).toMatchObject({ fault: 'input-range-unclear' });
    expect(inputMatch({ input: 'dsp.IN', sourceV: 1, leastV: 4, greatestV: 2 })).toMatchObject({
      fault: 'input-range-unclear',
    });
  });
});
