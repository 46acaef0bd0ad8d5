import { describe, expect, test } from 'vitest';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import {
  type ConductorEnd,
  type EndPreparation,
  type Port,
  prepareEnd,
} from '../../../lib/power/conductor/end-preparation.ts';
import { barrelStripM, ferruleStripM, lugStripM } from '../../../lib/power/conductor/strip-length.ts';
import { redone } from '../../publish/workings/redo.ts';
import { usualRules } from '../usual-rules.ts';

const mm2 = (areaMm2: number, material: ConductorEnd['material'] = 'copper'): ConductorEnd => ({
  id: `wire of ${areaMm2}`,
  areaMm2,
  material,
});
const clad = (areaMm2: number) => mm2(areaMm2, 'copper-clad-aluminium');
type Clamp = Extract<Port, { kind: 'set-screw' | 'spring-clamp' }>;
const clamp = (more: Partial<Clamp> = {}): Clamp => ({
  kind: 'set-screw',
  id: 'block.1',
  smallestMm2: 2.5,
  largestMm2: 25,
  ...more,
});
const spring = (more: Partial<Clamp> = {}) => clamp({ kind: 'spring-clamp', ...more });
const plug: Port = { kind: 'plug', id: 'radio.A4', smallestMm2: 0.5, largestMm2: 1.5 };
const stud: Port = { kind: 'stud', id: 'battery.plus', studM: 0.008 };

function prepared(port: Port, ...ends: readonly ConductorEnd[]): EndPreparation {
  const found = prepareEnd(ends, port, usualRules);
  if ('fault' in found) throw new Error(found.message);
  return found;
}
const notesOf = (end: EndPreparation) => ('notes' in end ? end.notes : []);
const alternativesOf = (end: EndPreparation) => (end.prep === 'refused' ? end.alternatives : []);

describe('the size that a port takes', () => {
  // 4 AWG is 21.15 mm2: a port for 21.15 mm2 takes 21.15 mm2, whatever the last digit of its table says.
  test('is kept to within a tenth of a per cent, at the upper end', () => {
    expect(prepared(clamp(), mm2(25.02)).prep).toBe('ferrule');
    expect(prepared(clamp(), mm2(25.03)).prep).toBe('refused');
    expect(prepared(plug, mm2(1.501)).prep).toBe('crimp');
    expect(prepared(plug, mm2(1.502)).prep).toBe('refused');
    expect(prepared({ ...stud, largestMm2: 25 }, mm2(25.02)).prep).toBe('lug');
    expect(prepared({ ...stud, largestMm2: 25 }, mm2(25.03)).prep).toBe('refused');
    expect(prepared(stud, mm2(120)).prep).toBe('lug');
  });

  test('and at the lower end, where what is thinner is noted', () => {
    expect(notesOf(prepared(clamp(), mm2(2.498)))).toEqual([]);
    expect(notesOf(prepared(clamp(), mm2(2.497)))).toEqual([
      '2.49 mm2 is thinner than block.1 is made for, 2.5 mm2 or more',
    ]);
    expect(notesOf(prepared(plug, mm2(0.35)))).toEqual([expect.stringContaining('0.5 mm2 or more')]);
    expect(notesOf(prepared(plug, mm2(0.75)))).toEqual([]);
  });

  test('holds for two conductors by the sum of both', () => {
    const port = clamp({ twin: true, largestMm2: 10, smallestMm2: 8 });
    expect(prepared(port, mm2(4), mm2(6))).toMatchObject({ prep: 'twin-ferrule', ferrule: { areaMm2: 6 } });
    expect(prepared(port, mm2(4.02), mm2(6)).prep).toBe('refused');
    expect(notesOf(prepared(port, mm2(4), mm2(4)))).toEqual([]);
    expect(notesOf(prepared(port, mm2(4), mm2(2.5)))).toEqual([expect.stringContaining('thinner')]);
  });

  test('is told with what would do', () => {
    const told = alternativesOf(prepared(clamp(), mm2(35)));
    expect(told.map((one) => one.split(' ').slice(0, 2).join(' '))).toEqual([
      'a reducer',
      'a port',
      'a thinner',
    ]);
    for (const end of [
      prepared({ ...stud, largestMm2: 10 }, mm2(25)),
      prepared({ ...stud, studM: null }, mm2(25)),
      prepared({ ...stud, studM: 0.007 }, mm2(25)),
      prepared(stud, ...Array.from({ length: 5 }, () => mm2(4))),
      prepared(plug, mm2(4)),
      prepared(plug, mm2(1), mm2(1)),
      prepared(clamp(), mm2(4), mm2(4)),
      prepared(clamp({ twin: true, largestMm2: 120 }), mm2(25), mm2(4)),
      prepared(spring({ largestMm2: 240 }), clad(185)),
    ])
      expect(alternativesOf(end).length, end.prep).toBeGreaterThan(0);
  });
});

describe('how many conductors end at a port', () => {
  test('is one, two where the maker of a clamp allows it, and on a stud what the shop allows', () => {
    const two = [mm2(2.5), mm2(2.5)];
    expect(prepared(clamp({ twin: true }), ...two).prep).toBe('twin-ferrule');
    expect(prepared(clamp(), ...two).prep).toBe('refused');
    expect(prepared(clamp({ twin: true }), ...two, mm2(2.5))).toMatchObject({
      prep: 'refused',
      reason: '3 conductors end at block.1',
    });
    expect(prepared({ ...plug, kind: 'push-on' }, mm2(1), mm2(1)).prep).toBe('refused');
    // A maker who allows two in one contact has both crimped in it together, as far as it takes them.
    const twoInOne: Port = { kind: 'plug', id: 'radio.A4', smallestMm2: 0.5, largestMm2: 1.5, most: 2 };
    const half = mm2(0.75);
    expect(prepared(twoInOne, half, half).prep).toBe('crimp');
    expect(prepared(twoInOne, half, mm2(0.76)).prep).toBe('refused');
    expect(prepared(twoInOne, mm2(0.5), mm2(0.5), mm2(0.5)).prep).toBe('refused');
    const lugs = (count: number) =>
      prepared(stud, ...Array.from({ length: count }, (_, k) => mm2(4 + k))).prep;
    expect(lugs(usualRules.mostLugsOnStud)).toBe('lug');
    expect(lugs(usualRules.mostLugsOnStud + 1)).toBe('refused');
  });

  test('on a stud is judged by the thickest of them', () => {
    expect(prepared(stud, mm2(4), mm2(25), mm2(10))).toMatchObject({ barrelMm2: 25 });
    expect(prepared({ ...stud, largestMm2: 16 }, mm2(4), mm2(25)).prep).toBe('refused');
  });

  test('twin ferrules end at 2 x 16 mm2', () => {
    const port = clamp({ twin: true, largestMm2: 120 });
    expect(prepared(port, mm2(16), mm2(16))).toMatchObject({
      prep: 'twin-ferrule',
      ferrule: { areaMm2: 16 },
    });
    expect(prepared(port, mm2(16), mm2(16.5)).prep).toBe('refused');
  });
});

describe('strands under a screw', () => {
  // A set screw cuts strands; a spring does not. Common practice, no source.
  test('have a ferrule, under a spring only where its maker asks for it', () => {
    expect(prepared(clamp(), mm2(4)).prep).toBe('ferrule');
    expect(prepared(spring(), mm2(4)).prep).toBe('bare');
    expect(prepared(spring({ ferrule: true }), mm2(4)).prep).toBe('ferrule');
  });

  test('too thick for any ferrule go bare under a set screw, and are refused where its maker asks for one', () => {
    const wide = { largestMm2: 240 };
    expect(prepared(clamp(wide), mm2(185)).prep).toBe('bare');
    expect(prepared(clamp({ ...wide, ferrule: true }), mm2(185)).prep).toBe('refused');
    expect(prepared(spring(wide), clad(185)).prep).toBe('refused');
  });

  test('of copper-clad aluminium have one anywhere, and are tightened again; copper is not', () => {
    expect(prepared(spring(), clad(4)).prep).toBe('ferrule');
    const again = [expect.stringContaining('tighten again')];
    for (const port of [clamp(), spring(), stud]) {
      expect(notesOf(prepared(port, clad(4))), port.kind).toEqual(again);
      expect(notesOf(prepared(port, mm2(4))), port.kind).toEqual([]);
    }
    expect(notesOf(prepared(clamp({ twin: true }), mm2(4), clad(4)))).toEqual(again);
  });
});

// Common practice, no source: the sleeve of a ferrule, one and a half diameters of the copper into a barrel.
describe('how long an end is stripped', () => {
  test('for a ferrule is the sleeve of its size', () => {
    const lengths = [1, 1.5, 6, 10, 16, 25].map((areaMm2) => ferruleStripM(areaMm2).value);
    expect(lengths).toEqual([0.008, 0.012, 0.012, 0.018, 0.018, 0.022]);
  });

  test('for a barrel is 1.5 diameters, and no less than 6 mm', () => {
    // 4 AWG is 0.2043 in of solid copper (ASTM B258): 1.5 * 5.189 mm = 7.784 mm. 12 AWG, 0.0808 in, 1.5 * 2.053 = 3.08 mm.
    expect(barrelStripM(awgAreaMm2('4')).value).toBeCloseTo(1.5 * 0.2043 * 0.0254, 5);
    expect(barrelStripM(awgAreaMm2('12')).value).toBe(0.006);
    const { value, trace } = barrelStripM(awgAreaMm2('4'));
    expect(redone(trace)).toBeCloseTo(value, 9);
  });

  test('for the barrel of a lug is 2.5 diameters: about what the barrels of DIN 46235 take', () => {
    // From memory, DIN 46235: 20 mm for 35 mm2 and 10 mm for 10 mm2; the demo shelf has 19 mm for 1/0 AWG.
    for (const [areaMm2, leastM, mostM] of [
      [33.6, 0.015, 0.02],
      [10, 0.008, 0.011],
      [53.5, 0.019, 0.028],
    ] as const) {
      const { value, trace } = lugStripM(areaMm2);
      expect(value).toBeGreaterThan(leastM);
      expect(value).toBeLessThan(mostM);
      expect(redone(trace)).toBeCloseTo(value, 9);
    }
  });

  test('is the depth of the port, where its maker tells it', () => {
    for (const port of [clamp(), spring(), clamp({ twin: true })]) {
      const ends = port.twin ? [mm2(4), mm2(4)] : [mm2(4)];
      const deep = prepared({ ...port, depthM: 0.014 }, ...ends);
      expect(deep).toMatchObject({ stripM: 0.014, strip: { trace: { origin: 'given' } } });
      const usual = port.kind === 'spring-clamp' ? barrelStripM(4).value : ferruleStripM(4).value;
      expect(prepared(port, ...ends)).toMatchObject({ stripM: usual, strip: { trace: { mark: 'cp' } } });
    }
  });
});

describe('what ends on a stud or in a plug', () => {
  test('is tightened again as soon as one conductor of several is copper-clad aluminium', () => {
    const [again] = notesOf(prepared(stud, clad(10)));
    expect(again).toMatch(/tighten again/);
    expect(notesOf(prepared(stud, mm2(16), clad(10)))).toEqual([again]);
    expect(notesOf(prepared(stud, mm2(16), mm2(10)))).toEqual([]);
    expect(notesOf(prepared(plug, clad(0.75)))).not.toEqual([]);
  });

  test('is refused where nobody measured the stud, and where nothing ends', () => {
    const unknown = prepared({ ...stud, studM: null }, mm2(10));
    expect(unknown).toMatchObject({
      prep: 'refused',
      reason: expect.stringMatching(/stud size of battery\.plus/),
    });
    expect(alternativesOf(unknown)).toEqual([expect.stringMatching(/write it as stud:/)]);
    expect(prepareEnd([], stud, usualRules)).toMatchObject({
      fault: 'nothing-ends-here',
      of: ['battery.plus'],
    });
  });
});
