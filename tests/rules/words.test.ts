import { describe, expect, test } from 'vitest';
import { everyFinding } from '../../lib/model/finding.ts';
import { judge } from '../../lib/rules/index.ts';
import {
  amps,
  counted,
  figure,
  lengthAskedIn,
  lengthIn,
  listed,
  percent,
  torqueIn,
} from '../../lib/rules/words.ts';
import { planKept } from '../plan/plan-kept.ts';
import { entry, jobOf, partIn } from './case.ts';
import { written } from './content.ts';

const lengths = (units: 'inch' | 'millimetre', fraction: 16 | 32 = 16, inWords = lengthIn) => {
  const content = written();
  Object.assign(content.shop, { units, fraction });
  return inWords(jobOf(content));
};

test('a figure has four digits that count, no trailing zeros, never a power of ten', () => {
  expect([12.34567, 0.000123456, 20, 1234.5, 1e-9, -0.00001, 0].map(figure)).toEqual([
    '12.35',
    '0.0001235',
    '20',
    '1235',
    '0.000000001',
    '-0.00001',
    '0',
  ]);
  expect(figure(Number.NaN)).toBe('an unknown number of');
});

test('units are those of the trade', () => {
  expect(amps(0.02)).toBe('0.02 A');
  expect(percent(0.03)).toBe('3 %');
});

// 25.4 mm to the inch (NIST SP 811): 13 5/8 in is 346.075 mm.
test('a length stands in both systems, that of the shop first', () => {
  expect(lengths('inch')(0.346075)).toBe('13 5/8 in (346 mm)');
  expect(lengths('millimetre')(0.346075)).toBe('346 mm (13 5/8 in)');
  expect(lengths('inch', 32)(0.0254 / 32)).toBe('1/32 in (0.8 mm)');
  expect(lengths('inch')(0.00028)).toBe('0.3 mm');
  expect(lengths('inch')(Number.POSITIVE_INFINITY)).toBe('an unknown length');
});

// 1/16 in is 1.5875 mm: a bolt that must be 2.2 mm longer is not long enough with it, and 2.21 mm is not 2.2.
test('a length that is asked for is never told as less than it must be', () => {
  expect(lengths('inch', 16, lengthAskedIn)(0.0022)).toBe('1/8 in (2.2 mm)');
  expect(lengths('millimetre', 16, lengthAskedIn)(0.00221)).toBe('2.3 mm (1/8 in)');
  expect(lengths('inch', 16, lengthAskedIn)(0.003175)).toMatch(/^1\/8 in/);
});

describe('a measure as it was written', () => {
  const content = () => {
    const all = written();
    Object.assign(all.shop, { units: 'millimetre', rules: { 'ground-lead': '18 in' } });
    Object.assign(entry(all.job.links, 'board-ground'), { length: '10 ft' });
    Object.assign(entry(all.job.links, 'amp-ground'), { length: '1200 mm' });
    Object.assign(entry(partIn(all, 'two-channel', 'amplifier').terminals, 'B+'), { torque: '35 lbf in' });
    return jobOf(all);
  };
  const ground = { path: '/links/board-ground' };

  // 10 ft are 3048 mm, 35 lbf in 3.954 N m (NIST SP 811).
  test('stands as it was written, with the other system beside it', () => {
    expect(lengthIn(content(), ground)(3.048)).toBe('10 ft (3048 mm)');
    expect(lengthIn(content(), { path: '/links/amp-ground' })(1.2)).toBe('1200 mm (47 1/4 in)');
    const amp = { path: '/parts/two-channel', file: 'part' } as const;
    expect(torqueIn(content(), amp)(35 * 0.45359237 * 9.80665 * 0.0254)).toBe('35 lbf in (3.954 N m)');
    expect(torqueIn(content(), amp)(4)).toBe('4 N m');
  });

  test('what was computed stands in the system of the place, a house rule as the shop set it', () => {
    expect(lengthIn(content(), ground)(0.3)).toBe('11 13/16 in (300 mm)');
    expect(lengthIn(content(), { path: '/links/amp-ground' })(0.4572)).toBe('18 in (457 mm)');
    expect(lengthIn(content(), { path: '/links/no-such-link' })(0.3)).toBe('300 mm (11 13/16 in)');
  });

  test('is looked up in the first place that has it', () => {
    const places = [{ path: '/links/amp-ground' }, ground];
    expect(lengthIn(content(), ...places)(3.048)).toBe('10 ft (3048 mm)');
    expect(lengthIn(content(), ...places)(0.3)).toBe('300 mm (11 13/16 in)');
  });

  test('reaches the finding: a ground lead in feet, in a shop that works in millimetres', () => {
    const job = content();
    const { plan, remarks } = planKept(job);
    const [found] = everyFinding(judge(job, plan, remarks)).filter(
      ({ rule, related }) => rule === 'ground-lead-long' && related[0] === 'board-ground',
    );
    expect(found?.message).toMatch(/is 10 ft \(3048 mm\) long; 18 in \(457 mm\) is the limit/);
  });
});

test('names are joined as they are spoken', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((names) => listed(names))).toEqual([
    'nothing',
    'a',
    'a and b',
    'a, b and c',
  ]);
  expect(listed(['a', 'b'], 'or')).toBe('a or b');
  expect([counted(1, 'wire'), counted(3, 'wire'), counted(0, 'fuse')]).toEqual([
    '1 wire',
    '3 wires',
    '0 fuses',
  ]);
});
