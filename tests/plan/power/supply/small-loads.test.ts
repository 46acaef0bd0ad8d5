import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { deviceLoads } from '../../../../lib/plan/power/device-loads.ts';
import { highestVoltageV } from '../../../../lib/plan/power/highest-voltage.ts';
import { setPointV } from '../../../../lib/plan/power/regulator-voltage.ts';
import { sizingVoltageV } from '../../../../lib/power/network/sizing-voltage.ts';
import { byId, one, partIn } from '../../../rules/case.ts';
import { settledPower } from '../settled-power.ts';
import { type Change, none, planned, readJob } from './planned-supply.ts';

/** What devices draw, worked out anew. */
function loads(change: Change = none) {
  const { job, paths } = settledPower(change);
  const book = new PlanBook();
  const own = deviceLoads(job, paths, [], book);
  return { of: (id: string) => one(own, ({ item }) => item === id), traces: book.traces() };
}

describe('what a device draws', () => {
  test('is what its part says, with where that comes from', () => {
    const { of, traces } = loads();
    expect(of('dsp')).toMatchObject({ fuseA: 5, ratedA: 1, musicA: 1, idleA: 1, powerW: 0 });
    expect(of('dsp')).not.toHaveProperty('assumed');
    expect(of('dsp')).not.toHaveProperty('musicDuty');
    expect(traces['power.loads.dsp.ratedA']).toMatchObject({
      origin: 'given',
      rule: 'device-draw',
      citation: "the part's data",
    });
    expect(traces['power.loads.dsp.fuseA']).toMatchObject({ origin: 'given', rule: 'device-fuse' });
    expect(traces['power.loads.dsp.idleA']).toMatchObject({ origin: 'given' });
  });

  test('is its fuse, where its maker says no more', () => {
    const { of, traces } = loads((content) => {
      delete partIn(content, 'dsp', 'processor').supply.draw;
    });
    expect(of('dsp')).toMatchObject({ ratedA: 5, idleA: 0, assumed: ['a draw of 5 A, its fuse'] });
    expect(traces['power.loads.dsp.ratedA']).toMatchObject({ origin: 'assumed' });
    expect(traces['power.loads.dsp.idleA']).toMatchObject({ origin: 'assumed', mark: 'cp' });
  });

  test('of an amplifier of no known class is that of class AB, which is told; of a known one it is not', () => {
    expect(loads().of('amp').assumed).toEqual(['an amplifier of class AB']);
    const known = loads((content) => {
      partIn(content, 'two-channel', 'amplifier').supply['amplifier-class'] = 'class-d';
    });
    expect(known.of('amp')).not.toHaveProperty('assumed');
    // Common practice, no source: 1 to 2 A of class AB without a signal, 0.5 to 1 A of class D.
    expect(known.of('amp').idleA).toBeLessThan(loads().of('amp').idleA);
    const told = loads((content) => {
      partIn(content, 'two-channel', 'amplifier').supply.idle = '700 mA';
    });
    expect(told.of('amp').idleA).toBeCloseTo(0.7, 9);
    expect(told.traces['power.loads.amp.idleA']).toMatchObject({ origin: 'given' });
  });

  // By hand: two channels of 75 W over 0.55 and 13.8 V are 19.76 A; all common practice.
  test('of an amplifier follows from what its channels give', () => {
    const { power, sizing } = planned();
    const amp = one(power.loads, ({ item }) => item === 'amp');
    expect(amp.powerW).toBeCloseTo(150, 6);
    expect(amp.ratedA).toBeCloseTo(150 / 0.55 / 13.8, 6);
    // Half of its power is bass, at one third; the other half music, at one eighth.
    expect(amp.musicDuty).toBeCloseTo((1 / 3 + 1 / 8) / 2, 3);
    expect(sizing.loads.map(({ item }) => item).toSorted()).toEqual(['amp', 'dsp', 'radio']);
  });
});

describe('the voltage that sizes are chosen at, and the highest that there is', () => {
  const alternator =
    (own: object): Change =>
    (content) => {
      Object.assign(partIn(content, 'generator', 'alternator'), own);
    };
  const second: Change = ({ parts, vehicle }) => {
    const generator = parts.generator;
    if (generator?.kind === 'alternator') parts.other = { ...generator };
    vehicle.fitted.other = { part: 'other', zone: 'engine-bay' };
  };

  // House rules, common practice: 13.8 V, 12.5 V where charging varies, up to 14.8 V at check-in and 15 V where it varies.
  test('are by the house rules, lower and higher where the alternator varies or is set otherwise', () => {
    expect(sizingVoltageV(readJob())).toBe(13.8);
    expect(sizingVoltageV(readJob(alternator({ 'set-point': '13.5 V' })))).toBe(13.5);
    expect(sizingVoltageV(readJob(alternator({ 'set-point': '14.4 V' })))).toBe(13.8);
    expect(sizingVoltageV(readJob(alternator({ 'variable-voltage': true })))).toBe(12.5);
    expect(highestVoltageV(readJob())).toBe(14.8);
    expect(highestVoltageV(readJob(alternator({ 'set-point': '15.2 V' })))).toBe(15.2);
    const one: Change = (content) => {
      second(content);
      alternator({ 'variable-voltage': true })(content);
    };
    // One of two that varies is enough.
    expect(highestVoltageV(readJob(one))).toBe(15);
    expect(sizingVoltageV(readJob(one))).toBe(12.5);
  });

  test('a regulator holds what was measured, what its part says, or what the house says for hot idle', () => {
    const held = (own: object, end?: 'weak' | 'strong', vehicleV?: `${number} V`) => {
      const job = readJob((content) => {
        alternator(own)(content);
        if (vehicleV !== undefined) content.vehicle['charging-voltage'] = vehicleV;
      });
      const spec = byId(job.devices, 'alternator').spec;
      return spec?.kind === 'alternator' ? setPointV(job, spec, end) : Number.NaN;
    };
    expect([held({}), held({}, 'weak'), held({}, 'strong')]).toEqual([13.8, 13.8, 14.4]);
    const set = { 'set-point': '14.2 V' };
    expect([held(set), held(set, 'weak'), held(set, 'strong')]).toEqual([14.2, 13.8, 14.4]);
    expect(held({ 'set-point': '14.7 V' }, 'strong')).toBe(14.7);
    expect([held(set, 'weak', '14 V'), held(set, 'strong', '14 V')]).toEqual([14, 14]);
    const varies = { 'variable-voltage': true };
    expect([held(varies), held(varies, 'weak'), held(varies, 'strong')]).toEqual([12.5, 12.2, 15]);
    expect(held({ ...varies, 'set-point': '12.4 V' })).toBe(12.4);
  });
});
