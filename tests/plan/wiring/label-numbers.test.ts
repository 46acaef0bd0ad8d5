import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nothingReleased } from '../../../lib/model/content/built.ts';
import { planItems } from '../../../lib/plan/plan-items.ts';
import { buildCircuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { wireLabels } from '../../../lib/plan/wiring/label-numbers.ts';
import { inJob, jobFile, partsFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';

function labels(
  changes: readonly Change[],
  released: Readonly<Record<string, string>> = {},
): Record<string, string> {
  const job = jobOf(smallShop(...changes), { demo: { labels: released, built: [] } });
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  return Object.fromEntries(wireLabels(job, buildCircuit(job, devices).roles));
}

/** An exchange in the parts of the small shop. */
const inPart = (found: string, instead: string): Change => [partsFile, found, instead];

/** A second woofer, its links before all others in the file. */
const second: readonly Change[] = [
  inJob('  sub: {', '  sub-two: { part: woofer-a, in: boot }\n  sub: {'),
  inJob('  tail: {', '  speaker-two: { from: amp.CH1, to: sub-two.C1, length: 3 ft }\n  tail: {'),
];

describe('labels of wires', () => {
  test('go by role, in the order of the file; a pair shares its number', () => {
    expect(labels([])).toEqual({
      tail: 'P1',
      feed: 'P2',
      ground: 'G1',
      'turn-on': 'T1',
      signal: 'S1',
      'speaker.+': 'L1+',
      'speaker.-': 'L1-',
    });
  });

  test('of a released revision stay when a device is added before them', () => {
    const released = labels([]);
    const later = labels(second, released);
    expect(later).toMatchObject(released);
    expect(later['speaker-two.+']).toBe('L2+');
    expect(labels(second)['speaker-two.+']).toBe('L1+');
  });

  test('that are given count, and no other wire takes their number', () => {
    const given = labels([inJob('length: 3 ft }', 'length: 3 ft, label: P2 }')]);
    expect([given['speaker.+'], given['speaker.-']]).toEqual(['P2+', 'P2-']);
    expect([given.tail, given.feed]).toEqual(['P1', 'P3']);
  });

  test('of wires that are gone are not given to new ones', () => {
    const released = { ...labels([]), old: 'P3' };
    const later = labels(
      [inJob('  turn-on: {', '  more: { from: main-fuse.OUT, to: amp.B+, length: 1 m }\n  turn-on: {')],
      released,
    );
    expect(later.more).toBe('P4');
  });

  test('whatever was released, no two wires share one, and what was released stays', () => {
    const ids = ['tail', 'feed', 'ground', 'turn-on', 'signal'];
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { minLength: 5, maxLength: 5 }),
        fc.subarray(ids),
        (numbers, kept) => {
          const released = Object.fromEntries(
            ids.map((id, at) => [id, `P${numbers[at]}`]).filter(([id]) => kept.includes(id ?? '')),
          );
          const now = labels(second, released);
          expect(now).toMatchObject(released);
          expect(new Set(Object.values(now)).size).toBe(Object.keys(now).length);
        },
      ),
      { numRuns: 30 },
    );
  });
});

/** The woofer of the small job joined conductor by conductor. */
const apart: readonly Change[] = [
  inJob(
    '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }',
    [
      '  minus: { from: amp.CH1-, to: sub.C1-, length: 3 ft }',
      '  plus: { from: amp.CH1+, to: sub.C1+, length: 3 ft }',
    ].join('\n'),
  ),
];

describe('names of terminals', () => {
  const planOf = (...changes: readonly Change[]) => {
    const job = jobOf(smallShop(...changes), { demo: nothingReleased });
    return planItems(job);
  };

  test('are the marks of their maker; those without one are numbered in the order of the file', () => {
    const items = planOf(
      inPart('B+: { role: supply-positive, joint', 'B+: { mark: +12V, role: supply-positive, joint'),
      inPart('GND: { role: supply-negative, joint', 'GND: { mark: none, role: supply-negative, joint'),
    );
    const amp = items.find(({ id }) => id === 'amp');
    const shown = (name: string) => amp?.terminals.find((terminal) => terminal.name === name)?.shown;
    expect([shown('B+'), shown('GND'), shown('CH1+')]).toEqual(['+12V', 'port 1', undefined]);
  });

  test('are never proposed as the label of a wire, nor is a mark', () => {
    expect(
      labels([inPart('B+: { role: supply-positive, joint', 'B+: { mark: p1, role: supply-positive, joint')])
        .tail,
    ).toBe('P2');
  });
});

describe('signs of speaker conductors', () => {
  test('two links to one coil share a number, each with its sign', () => {
    const { plus, minus } = labels(apart);
    expect([plus, minus]).toEqual(['L1+', 'L1-']);
  });

  test('a sign that the job writes itself is not written twice', () => {
    const given = labels([
      ...apart,
      inJob('to: sub.C1+, length: 3 ft }', 'to: sub.C1+, length: 3 ft, label: SUB+ }'),
    ]);
    expect([given.plus, given.minus]).toEqual(['SUB+', 'SUB-']);
  });

  test('a label that was released without a sign stays, and the other of its pair takes its number', () => {
    const later = labels(apart, { plus: 'L4' });
    expect([later.plus, later.minus]).toEqual(['L4', 'L4-']);
  });

  test('a speaker that is turned about keeps the signs of the amplifier', () => {
    const turned = labels([
      inJob(
        '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }',
        [
          '  one: { from: sub.C1-, to: amp.CH1+, length: 3 ft }',
          '  two: { from: sub.C1+, to: amp.CH1-, length: 3 ft }',
        ].join('\n'),
      ),
    ]);
    expect([turned.one, turned.two]).toEqual(['L1+', 'L1-']);
  });
});

test('the job of these tests is the small one', () => {
  expect(smallShop().map(({ path }) => path)).toContain(jobFile);
});
