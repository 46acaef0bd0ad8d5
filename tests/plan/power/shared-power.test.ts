import { describe, expect, test } from 'vitest';
import { inJob, partsFile } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';

const device = (text: string): Change => inJob('  sub: {', `  ${text}\n  sub: {`);
const links = (...texts: readonly string[]): Change =>
  inJob('  speaker: {', `${texts.map((text) => `  ${text}\n`).join('')}  speaker: {`);

describe('a turn-on wire from a fused way', () => {
  // 33 CFR 183.425, Table 5: 18 AWG of 105 C carries 20 A, 17 A at 50 C; the smallest maxi blade is 20 A.
  const turnOn = (how: string) => {
    const { plan, remarks } = smallPlan(
      device('block: { part: block-a, in: boot }'),
      links('block-feed: { from: main-fuse.OUT, to: block.IN, length: 2 m }'),
      inJob(
        '  turn-on: { from: radio.REM, to: amp.REM }',
        `  turn-on: { from: block.OUT1, to: amp.REM, ${how} }`,
      ),
    );
    expect(byId(plan.power.fuses, 'block.OUT1').ratingA).toBe(20);
    return remarks.filter(({ rule }) => rule === 'turn-on-wire-under-fuse');
  };

  test('thinner than its fuse: a stop with both figures', () => {
    expect(turnOn('wire: blue-18')).toEqual([
      expect.objectContaining({ level: 'stop', of: ['turn-on'], value: 17, limit: 20 }),
    ]);
  });

  test('thick enough: nothing to say', () => {
    expect(turnOn('wire: red-8')).toEqual([]);
  });
});

describe('a ground that two amplifiers share', () => {
  const second: readonly Change[] = [
    device('fuse-2: { part: holder-a, in: bay }'),
    device('amp-2: { part: amp-a, in: boot }'),
    links(
      'tail-2: { from: battery.POS, to: fuse-2.IN, length: 6 in }',
      'feed-2: { from: fuse-2.OUT, to: amp-2.B+, length: 4 m }',
      'ground-2: { from: amp-2.GND, to: amp.GND, length: 12 in }',
    ),
  ];

  test('carries the sum of what both their fuses let flow; its own part alone carries its own', () => {
    const { plan } = smallPlan(...second);
    const needed = (id: string) => byId(plan.power.conductors, id).neededA;
    expect(needed('feed-2')).toBeGreaterThan(0);
    expect(needed('ground')).toBe(needed('feed') + needed('feed-2'));
    expect(needed('ground-2')).toBe(needed('feed-2'));
  });

  test('of one amplifier alone carries what its own fuse lets flow', () => {
    const { plan } = smallPlan();
    expect(byId(plan.power.conductors, 'ground').neededA).toBe(byId(plan.power.conductors, 'feed').neededA);
  });
});

describe('a fuse before several devices', () => {
  const radio: readonly Change[] = [
    device('radio-2: { part: radio-a, in: boot }'),
    links(
      'feed-2: { from: main-fuse.OUT, to: radio-2.B+, length: 1 m }',
      'ground-2: { from: radio-2.GND, to: body.cargo, length: 12 in }',
    ),
  ];

  test('has the least of their ceilings, and no rating where that is under their current', () => {
    // The amplifier's maker allows 60 A, the radio's 10 A.
    const fuse = byId(smallPlan(...radio).plan.power.fuses, 'main-fuse');
    expect(fuse).toMatchObject({ ceilingA: 10, ratingA: null });
    expect(fuse.reason).toMatch(/limit is maker's ceiling, 10 A/);
  });

  test('has the ceiling of the one device behind it', () => {
    expect(byId(smallPlan().plan.power.fuses, 'main-fuse')).toMatchObject({ ceilingA: 60, ratingA: 60 });
  });
});

describe('a fuse that two batteries reach bare', () => {
  const large: Change = [
    partsFile,
    '  generator-a:\n',
    `  battery-b:
    kind: battery
    title: Large battery
    size: { width: 100 mm, depth: 80 mm, height: 40 mm }
    mass: 1 kg
    chemistry: absorbed-glass-mat
    capacity: 70 Ah
    cold-cranking: 1200 A
    terminals:
      POS: { role: source-positive, joint: stud, stud: M8, conductors: 4 }
      NEG: { role: source-negative, joint: stud, stud: M8, conductors: 4 }
  generator-a:
`,
  ];

  test('must interrupt what both drive', () => {
    const { plan } = smallPlan(
      large,
      device('other: { part: battery-b, in: bay }'),
      links(
        'other-tail: { from: other.POS, to: main-fuse.IN, length: 6 in }',
        'other-return: { from: other.NEG, to: body.engine, length: 6 in }',
      ),
    );
    const { faultFrom = [], ...fuse } = byId(plan.power.fuses, 'main-fuse');
    expect(faultFrom.map(({ source }) => source).sort()).toEqual(['alternator', 'battery', 'other']);
    expect(fuse.needsInterruptA).toBe(fuse.faultA);
    expect(fuse.faultA).toBeGreaterThan(byId(smallPlan().plan.power.fuses, 'main-fuse').faultA ?? 0);
  });

  test('is asked by the table for the cranking current of both together', () => {
    // ABYC E-11, from memory: 600 A and 600 A are 1,200 A, above 1,100 A: 5 kA.
    const { plan } = smallPlan(
      ['content/shop.yaml', 'stock:', 'rules:\n  short-resistance-agm: 40 mohm\nstock:'],
      device('other: { part: battery-a, in: bay }'),
      links(
        'other-tail: { from: other.POS, to: main-fuse.IN, length: 6 in }',
        'other-return: { from: other.NEG, to: body.engine, length: 6 in }',
      ),
    );
    expect(byId(plan.power.fuses, 'main-fuse').needsInterruptA).toBe(5000);
  });

  test('of one battery alone what that one drives', () => {
    const { plan } = smallPlan(large);
    const { source, faultFrom = [] } = byId(plan.power.fuses, 'main-fuse');
    expect(source).toBe('battery');
    expect(faultFrom.map(({ source: from }) => from)).toEqual(['battery', 'alternator']);
  });
});
