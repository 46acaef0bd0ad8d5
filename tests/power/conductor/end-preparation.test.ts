import { describe, expect, test } from 'vitest';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import {
  type ConductorEnd,
  type Port,
  prepareEnd as prepareEndBy,
} from '../../../lib/power/conductor/end-preparation.ts';
import { usualRules } from '../usual-rules.ts';

const prepareEnd = (ends: readonly ConductorEnd[], port: Port) => prepareEndBy(ends, port, usualRules);

const end = (awg: string, id = 'wire', material: ConductorEnd['material'] = 'copper'): ConductorEnd => ({
  id,
  areaMm2: awgAreaMm2(awg),
  material,
});
const screw = (more: Partial<Extract<Port, { kind: 'set-screw' | 'spring-clamp' }>> = {}): Port => ({
  kind: 'set-screw',
  id: 'block.1',
  smallestMm2: 2.5,
  largestMm2: awgAreaMm2('4'),
  ...more,
});

describe('the end of a conductor', () => {
  test('in a set screw takes a ferrule of the next size up', () => {
    // DIN 46228-4: 4 AWG is 21.15 mm2, so 25 mm2, and not the nearer 16.
    expect(prepareEnd([end('4')], screw({ depthM: 0.016 }))).toMatchObject({
      prep: 'ferrule',
      ferrule: { areaMm2: 25 },
      stripM: 0.016,
    });
  });

  test('too large for its port is refused with what would do', () => {
    expect(prepareEnd([end('1/0')], screw())).toMatchObject({
      prep: 'refused',
      alternatives: expect.arrayContaining([expect.stringContaining('reducer')]),
    });
  });

  test('too small for its port is noted', () => {
    expect(prepareEnd([end('18')], screw())).toMatchObject({
      prep: 'ferrule',
      notes: [expect.stringContaining('thinner')],
    });
  });

  test('beside another takes a twin ferrule only where the maker allows it, to 2 x 16 mm2', () => {
    const two = [end('12', 'a'), end('10', 'b')];
    expect(prepareEnd(two, screw())).toMatchObject({ prep: 'refused' });
    expect(prepareEnd(two, screw({ twin: true }))).toMatchObject({
      prep: 'twin-ferrule',
      ferrule: { areaMm2: 6 },
    });
    expect(prepareEnd([end('4', 'a'), end('4', 'b')], screw({ twin: true, largestMm2: 50 }))).toMatchObject({
      prep: 'refused',
    });
    expect(prepareEnd([end('8', 'a'), end('6', 'b')], screw({ twin: true, largestMm2: 16 }))).toMatchObject({
      prep: 'refused',
    });
    expect(prepareEnd([...two, end('12', 'c')], screw({ twin: true }))).toMatchObject({ prep: 'refused' });
  });

  test('on a stud takes a lug with the hole of the stud, four at most', () => {
    const stud: Port = { kind: 'stud', id: 'battery.plus', studM: 0.008 };
    expect(prepareEnd([end('1/0')], stud)).toMatchObject({ prep: 'lug', holeM: 0.0084 });
    expect(
      prepareEnd(
        Array.from({ length: 5 }, (_, k) => end('8', `w${k}`)),
        stud,
      ),
    ).toMatchObject({ prep: 'refused' });
    expect(prepareEnd([end('4')], { ...stud, studM: 0.007 })).toMatchObject({ prep: 'refused' });
    expect(prepareEnd([end('4')], { ...stud, largestMm2: 10 })).toMatchObject({ prep: 'refused' });
  });

  test('of copper-clad aluminium takes a ferrule and a note to tighten it again, or is refused', () => {
    const clamp = screw({ kind: 'spring-clamp', largestMm2: 120 });
    expect(prepareEnd([end('4')], clamp)).toMatchObject({ prep: 'bare' });
    expect(prepareEnd([end('4', 'w', 'copper-clad-aluminium')], clamp)).toMatchObject({
      prep: 'ferrule',
      notes: [expect.stringContaining('tighten')],
    });
    expect(prepareEnd([end('1/0', 'w', 'copper-clad-aluminium')], clamp)).toMatchObject({ prep: 'refused' });
  });

  test('in a plug is crimped, one only', () => {
    const plug: Port = { kind: 'plug', id: 'radio.A4', smallestMm2: 0.35, largestMm2: 1.5 };
    expect(prepareEnd([end('18')], plug)).toMatchObject({ prep: 'crimp' });
    expect(prepareEnd([end('12')], plug)).toMatchObject({ prep: 'refused' });
    expect(prepareEnd([end('18', 'a'), end('18', 'b')], plug)).toMatchObject({ prep: 'refused' });
  });

  test('is no end without a conductor or an area', () => {
    expect(prepareEnd([], screw())).toHaveProperty('fault');
    expect(prepareEnd([{ ...end('4'), areaMm2: 0 }], screw())).toHaveProperty('fault');
  });
});
