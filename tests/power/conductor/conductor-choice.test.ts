import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { awgSizes } from '../../../lib/model/tables/awg-sizes.ts';
import {
  type ConductorChoice,
  type ConductorDuty,
  chooseConductor,
} from '../../../lib/power/conductor/conductor-choice.ts';
import type { PowerRules } from '../../../lib/power/power-rules.ts';
import { outsideCheck } from '../../outside-check.ts';
import { usualRules } from '../usual-rules.ts';
import { bench, cable, duty } from './conductor-duty.ts';

const inHandbook = outsideCheck('drop-in-handbooks');

const every = awgSizes.map((awg) => cable(awg));
function choose(given: ConductorDuty, candidates = every, rules: PowerRules = usualRules): ConductorChoice {
  const result = chooseConductor(given, candidates, rules);
  if (isFault(result)) throw new Error(result.message);
  return result;
}

describe('a conductor choice', () => {
  // 33 CFR 183.425, Table 5, has columns to 80 C and to 105 C: insulation at or below its ambient carries nothing.
  test('takes insulation for the ambient of its way, though no fuse limits it', () => {
    const music = duty({ fuseA: 0, currentA: 0, zones: [{ ...bench, ambientC: 85 }] });
    const [thin, hot] = [cable('16', { insulationC: 80 }), cable('14', { insulationC: 105 })];
    expect(choose(music, [thin, hot]).chosen?.candidate).toBe(hot);
    expect(choose(music, [thin]).chosen).toBeNull();
    expect(choose({ ...music, zones: [bench] }, [thin, hot]).chosen?.candidate).toBe(thin);
  });

  // ABYC E-11, CM = K I L / E with K = 10.75, and the worked example that marine wiring guides print beside its 3 %
  // chart: a pump of 10 A at 12 V, 11 ft out and 10 ft back, asks for 6,270 circular mils, so for 12 AWG (6,530).
  // K is that of stranded copper near 25 C.
  test('agrees with a published worked example of voltage drop', () => {
    const zones = [{ ...bench, ambientC: 25 }];
    const example = duty({ fuseA: 15, currentA: 10, lengthM: 21 * 0.3048, mostDropV: 0.36, zones });
    const { chosen } = choose(example, every, { ...usualRules, conductorC: 25 });
    expect(chosen?.candidate.size.label).toBe('12 AWG');
    // 10.75 * 10 * 21 / 6530 = 0.3457 V by the handbook's formula.
    expect(Math.abs(inHandbook.differs(chosen?.dropV.value ?? 0, 0.3457) / 0.3457 - 1)).toBeLessThan(0.005);
  });

  // NBS Handbook 100 (1966), copper wire table, solid annealed copper at 20 C, ohm per 1,000 ft: 4 AWG 0.2485,
  // 10 AWG 0.9989. So 80 A over 25 ft of 4 AWG drop 80 * 0.2485 * 0.025 = 0.4970 V, and 20 A over 40 ft of 10 AWG
  // 20 * 0.9989 * 0.040 = 0.7991 V.
  test.each([
    ['4', 80, 25, 0.497],
    ['10', 20, 40, 0.7991],
  ])('drops in %s AWG what the handbook says', (awg, currentA, feet, dropV) => {
    const solidAndCold = { ...usualRules, conductorC: 20, strandedFactor: 1 };
    const zones = [{ ...bench, ambientC: 20 }];
    const given = duty({ fuseA: 1, currentA, lengthM: feet * 0.3048, mostDropV: 10, zones });
    const found = choose(given, [cable(awg)], solidAndCold).chosen?.dropV.value ?? 0;
    // Four digits of the handbook: within one unit of the last.
    expect(Math.abs(inHandbook.differs(found, dropV) / dropV - 1)).toBeLessThan(0.0005);
  });

  test('names the fuse where ampacity governs', () => {
    // Table 5, 105 C: 8 AWG carries 80 A, 6 AWG 120 A.
    const { chosen, governed, reason } = choose(duty());
    expect([chosen?.candidate.size.label, governed]).toEqual(['6 AWG', ['fuse']]);
    expect(reason).toContain('8 AWG: it carries 80 A, 20 A less than its fuse');
  });

  test('names the drop where length governs', () => {
    const { chosen, governed } = choose(duty({ lengthM: 5 }));
    expect([chosen?.candidate.size.label, governed]).toEqual(['4 AWG', ['drop']]);
  });

  test('counts the return and all else on the way', () => {
    const alone = choose(duty({ lengthM: 4 })).chosen?.candidate.size.areaMm2 ?? 0;
    const loop =
      choose(duty({ lengthM: 4, loopLengthM: 8, otherOhm: 0.001 })).chosen?.candidate.size.areaMm2 ?? 0;
    expect(loop).toBeGreaterThan(alone);
  });

  test('never shrinks, and minds port and shelf', () => {
    expect(choose(duty({ leastMm2: awgSize('2').areaMm2 })).chosen?.candidate.size.label).toBe('2 AWG');
    const ports = [{ id: 'block.in', largestMm2: awgSize('8').areaMm2 }];
    expect(choose(duty({ ports }))).toMatchObject({ chosen: null });
    expect(
      choose(duty({ ports: ports.map((port) => ({ ...port, reduces: () => true })) })).chosen,
    ).not.toBeNull();
    const short = every.map((one) => (one.size.label === '6 AWG' ? { ...one, stockM: 0.5 } : one));
    expect(choose(duty(), short)).toMatchObject({
      chosen: { candidate: { part: 'cable-4' } },
      governed: ['stock'],
    });
  });

  test('says why nothing fits and by how much', () => {
    const { chosen, governed, reason } = choose(duty({ fuseA: 500 }));
    expect([chosen, governed]).toEqual([null, ['fuse']]);
    expect(reason).toBe('nothing fits; the nearest is 4/0 AWG: it carries 445 A, 55 A less than its fuse');
    expect(choose(duty(), []).reason).toBe('nothing fits: no cable is on the shelf');
  });

  test('tells bad input', () => {
    expect(chooseConductor(duty({ lengthM: -1 }), every, usualRules)).toHaveProperty('fault');
    expect(chooseConductor(duty({ zones: [] }), every, usualRules)).toHaveProperty('fault');
    expect(chooseConductor(duty(), [cable('4', { measuredOhmPerM: 0 })], usualRules)).toHaveProperty('fault');
  });
});

const anyCables = fc.subarray(every);
const anyDuty = fc
  .record({
    fuseA: fc.integer({ min: 1, max: 400 }),
    currentA: fc.integer({ min: 1, max: 300 }),
    lengthM: fc.double({ min: 0.1, max: 8, noNaN: true }),
    mostDropV: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
  })
  .map(duty);

test('what is chosen carries its fuse and keeps its drop; more on the shelf never takes it away', () => {
  fc.assert(
    fc.property(anyDuty, anyCables, anyCables, (given, first, more) => {
      const before = choose(given, first).chosen;
      const after = choose(given, [...new Set([...first, ...more])]).chosen;
      if (!before) return;
      expect(before.ampacity.ampacityA.value).toBeGreaterThanOrEqual(given.fuseA);
      expect(before.dropV.value).toBeLessThanOrEqual(given.mostDropV);
      expect(after?.candidate.size.areaMm2).toBeLessThanOrEqual(before.candidate.size.areaMm2);
    }),
  );
});

test('a cable that is too thin for any ampacity is passed over; where all are, the fault names each', () => {
  const thin = (part: string) => ({ ...cable('4'), part, size: { label: '28 AWG', areaMm2: 0.08 } });
  expect(choose(duty(), [thin('hair'), ...every]).chosen?.candidate.part).not.toBe('hair');
  const none = chooseConductor(duty(), [thin('hair'), thin('thread')], usualRules);
  expect(none).toMatchObject({ message: expect.stringMatching(/hair: .*24 AWG.*; thread: .*24 AWG/) });
});
