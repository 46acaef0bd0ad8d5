import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import {
  type CableCandidate,
  type ConductorChoice,
  type ConductorDuty,
  cableSm,
  chooseConductor,
  goesIn,
} from '../../../lib/power/conductor/conductor-choice.ts';
import { usualRules } from '../usual-rules.ts';
import { bench, cable, duty } from './conductor-duty.ts';

const shelf = ['8', '6', '4', '2'].map((awg) => cable(awg));
function choose(given: ConductorDuty, candidates: readonly CableCandidate[] = shelf): ConductorChoice {
  const result = chooseConductor(given, candidates, usualRules);
  if (isFault(result)) throw new Error(result.message);
  return result;
}
const label = (given: ConductorDuty, candidates?: readonly CableCandidate[]) =>
  choose(given, candidates).chosen?.candidate.size.label;
const missed = (given: ConductorDuty, one: CableCandidate) =>
  choose(given, [one]).considered[0]?.misses.map(({ limit }) => limit);

describe('the bounds of a conductor', () => {
  test('it may be loaded with its ampacity, and not with a tenth of an ampere more', () => {
    expect(label(duty({ fuseA: 120 }))).toBe('6 AWG');
    expect(label(duty({ fuseA: 120.1 }))).toBe('4 AWG');
  });

  test('it may drop what is allowed, and no more', () => {
    const six = cable('6');
    const dropV = choose(duty(), [six]).considered[0]?.dropV.value ?? Number.NaN;
    expect(missed(duty({ mostDropV: dropV }), six)).toEqual([]);
    expect(missed(duty({ mostDropV: dropV * 0.999 }), six)).toEqual(['drop']);
  });

  test('it may take the whole piece on the shelf, and no millimetre more', () => {
    expect(missed(duty({ lengthM: 1 }), cable('6', { stockM: 1 }))).toEqual([]);
    expect(missed(duty({ lengthM: 1.001 }), cable('6', { stockM: 1 }))).toEqual(['stock']);
  });

  test('sizes within a tenth of a per cent are the same, at a port and as the least size', () => {
    const areaMm2 = awgSize('6').areaMm2;
    expect(missed(duty({ leastMm2: areaMm2 * 1.0009 }), cable('6'))).toEqual([]);
    expect(missed(duty({ leastMm2: areaMm2 * 1.002 }), cable('6'))).toEqual(['least-size']);
    expect(goesIn(10.009, { largestMm2: 10 })).toBe(true);
    expect(goesIn(10.011, { largestMm2: 10 })).toBe(false);
    const port = (largestMm2: number) => duty({ ports: [{ id: 'amp.B+', largestMm2 }] });
    expect(missed(port(areaMm2), cable('6'))).toEqual([]);
    expect(missed(port(areaMm2 * 0.99), cable('6'))).toEqual(['port']);
  });

  test('what a reducer is made for goes in, and nothing else that is too thick', () => {
    const port = { largestMm2: 10, reduces: (areaMm2: number) => areaMm2 < 20 };
    expect([9, 19, 20].map((areaMm2) => goesIn(areaMm2, port))).toEqual([true, true, false]);
  });

  test('a ground conducts as well as its feeds', () => {
    const sm = cableSm(cable('6'), usualRules);
    expect(missed(duty({ leastSm: sm }), cable('6'))).toEqual([]);
    expect(missed(duty({ leastSm: sm * 1.05 }), cable('6'))).toEqual(['conductance']);
    // What was measured goes before the table: at twice the resistance half the conductance.
    const measured = cable('6', { measuredOhmPerM: 1 / (sm / 2) });
    expect(cableSm(measured, usualRules)).toBeCloseTo(sm / 2, 6);
  });

  test('of two ports each must take it', () => {
    const ports = [
      { id: 'a', largestMm2: awgSize('2').areaMm2 },
      { id: 'b', largestMm2: awgSize('8').areaMm2 },
    ];
    expect(missed(duty({ ports }), cable('6'))).toEqual(['port']);
    expect(choose(duty({ ports }), [cable('6')]).reason).toContain('b takes at most');
  });
});

describe('what the drop is made of', () => {
  // Ohm's law: 80 A over 2 m of r and 1 mohm.
  test('the whole way at its hot resistance, and all else on it', () => {
    const [six] = choose(duty({ loopLengthM: 2, otherOhm: 0.001 }), [cable('6')]).considered;
    const r = six?.ohmPerM.value ?? Number.NaN;
    expect(six?.dropV.value).toBeCloseTo(80 * 2 * r + 0.08, 9);
    expect(six?.dropV.trace.inputs).toEqual([
      { name: 'I', value: 80, unit: 'A' },
      { name: 'r', value: r, unit: 'ohm/m' },
      { name: 'L', value: 2, unit: 'm' },
      { name: 'Ro', value: 0.001, unit: 'ohm' },
    ]);
  });

  test('a measured resistance goes before the table', () => {
    const own = choose(duty(), [cable('6')]).considered[0]?.dropV.value ?? Number.NaN;
    const worse = choose(duty(), [cable('6', { measuredOhmPerM: 0.01 })]).considered[0]?.dropV.value;
    expect(worse).toBeGreaterThan(own * 5);
  });
});

describe('of lawful conductors', () => {
  /** In a bundle of seven an ampacity is derated; at the stop limit it is not. */
  const warm = duty({ warmFuseA: 100, zones: [{ ...bench, covered: true, ambientC: 45, bundleCount: 7 }] });

  test('one that covers its fuse at the true ambient goes before a thinner one that does not', () => {
    const { chosen, considered, reason } = choose(warm, [...shelf, cable('1/0'), cable('4/0')]);
    const before = considered.filter((_, k) => !chosen || k < considered.indexOf(chosen));
    expect(before.some(({ misses }) => misses.length === 0)).toBe(true);
    expect(chosen?.doubt).toBeNull();
    expect(chosen?.ampacity.cautionA.value).toBeGreaterThanOrEqual(100);
    expect(reason).toContain('at the true ambient');
  });

  test('the thinnest is taken where none covers it', () => {
    const { chosen } = choose({ ...warm, warmFuseA: 10_000 });
    expect(chosen?.candidate.size.label).toBe('6 AWG');
    expect(chosen?.doubt).toContain('less than its fuse');
  });

  test('no doubt is left where it covers the fuse to the ampere', () => {
    const cautionA = choose(warm, [cable('4')]).considered[0]?.ampacity.cautionA.value ?? Number.NaN;
    const doubt = (warmFuseA: number) => choose({ ...warm, warmFuseA }, [cable('4')]).considered[0]?.doubt;
    expect(doubt(cautionA)).toBeNull();
    expect(doubt(cautionA + 0.1)).not.toBeNull();
  });

  test('of one size the first by name is taken, in whatever order they lie', () => {
    const [a, b] = [cable('6', { part: 'a' }), cable('6', { part: 'b' })];
    for (const both of [
      [a, b],
      [b, a],
    ])
      expect(choose(duty(), both).chosen?.candidate.part).toBe('a');
  });
});

describe('what is told of a choice', () => {
  const said = (given: ConductorDuty, one = cable('6')) => choose(given, [one]).considered[0];
  /** The first number before a unit. */
  const figureBefore = (unit: string, text = '') => Number(new RegExp(`([\\d.,]+) ${unit}`).exec(text)?.[1]);

  test('by how much it misses each limit, as the gap and not the sum', () => {
    const dropV = said(duty())?.dropV.value ?? Number.NaN;
    const drop = said(duty({ mostDropV: dropV / 2 }))?.misses[0]?.text;
    // Half of it is allowed, so that it is above by the other half.
    expect(figureBefore('V', drop?.split(', ')[1])).toBeCloseTo(dropV / 2, 2);
    const least = awgSize('4').areaMm2;
    expect(figureBefore('mm2', said(duty({ leastMm2: least }))?.misses[0]?.text)).toBeCloseTo(least, 0);
    const sm = cableSm(cable('6'), usualRules);
    expect(said(duty({ leastSm: sm * 2 }))?.misses[0]?.text).toContain('50 %');
    const cautionA = said(duty({ warmFuseA: 1 }))?.ampacity.cautionA.value ?? Number.NaN;
    expect(said(duty({ warmFuseA: cautionA + 40 }))?.doubt).toContain('40 A less than its fuse');
  });

  test('the working of a drop bears the mark of its resistance', () => {
    const table = said(duty());
    expect(table?.dropV.trace.mark).toBe(table?.ohmPerM.trace.mark);
    expect(table?.dropV.trace.mark).toBe('cp');
    expect(said(duty(), cable('6', { measuredOhmPerM: 0.001 }))?.dropV.trace).not.toHaveProperty('mark');
  });

  test('the smallest of all is told as such', () => {
    const { reason, governed } = choose(duty({ fuseA: 60 }));
    expect([reason, governed]).toEqual(['8 AWG is the smallest on the shelf, and fits', []]);
  });

  test('what it carries at the true ambient is told before that an earlier pass needed more', () => {
    const leastMm2 = awgSize('4').areaMm2;
    const { reason } = choose(duty({ fuseA: 60, warmFuseA: 500, leastMm2 }));
    expect(reason).toMatch(/6 AWG: it carries \d+ A at the true ambient, under loom or in its bundle, /);
  });

  test('that an earlier pass needed more is told only where nothing else rules a cable out', () => {
    const leastMm2 = awgSize('4').areaMm2;
    expect(choose(duty({ fuseA: 60, leastMm2, leastWhy: 'amp.B+ takes nothing thinner' })).reason).toMatch(
      /6 AWG: it is to be 21\.\d+ mm2 or larger: amp\.B\+ takes nothing thinner$/,
    );
    const alone = choose(duty({ fuseA: 130, leastMm2 }));
    expect(alone.reason).toContain('6 AWG: it carries 120 A, 10 A less than its fuse');
    expect(alone.reason).not.toContain('it is to be');
  });

  test('where nothing fits the one that misses fewest is the nearest, the thickest of these', () => {
    const thinPort = [{ id: 'amp.B+', largestMm2: awgSize('6').areaMm2 }];
    // 8 and 6 AWG miss the fuse alone, 4 and 2 AWG the fuse and the port: 6 AWG is the nearest.
    const { governed, reason } = choose(duty({ fuseA: 500, ports: thinPort }));
    expect(governed).toEqual(['fuse']);
    expect(reason).toMatch(/^nothing fits; the nearest is 6 AWG: it carries 120 A, 380 A less/);
  });
});

test.each([
  { lengthM: 0 },
  { mostDropV: 0 },
  { fuseA: -1 },
  { currentA: -1 },
  { otherOhm: -0.001 },
  { lengthM: Number.NaN },
])('a duty of %o is none', (more) => {
  expect(chooseConductor(duty(more), shelf, usualRules)).toHaveProperty('fault');
});

test('a cable whose figures are no figures is named, with what is wrong', () => {
  const broken = cable('6', { measuredOhmPerM: -1 });
  const unnamed = cable('4', { part: '', measuredOhmPerM: -1 });
  const none = chooseConductor(duty(), [broken, unnamed], usualRules);
  expect(none).toMatchObject({ fault: 'no-cable-judged', of: ['cable-6', '4 AWG'] });
  expect(isFault(none) && none.message).toMatch(/cable-6: .*; 4 AWG: |4 AWG: .*; cable-6: /);
  expect(label(duty(), [broken, cable('4')])).toBe('4 AWG');
});
