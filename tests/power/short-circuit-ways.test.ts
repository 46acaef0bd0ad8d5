import { describe, expect, test } from 'vitest';
import type { NetworkElement } from '../../lib/power/network/network-types.ts';
import { type ShortCircuit, shortCircuit } from '../../lib/power/short-circuit.ts';

const battery = (id: string, emfV: number, ohm: number): NetworkElement => {
  return { id, kind: 'source', model: 'emf', from: `${id}+`, to: 'body', emfV, ohm };
};
const line = (id: string, from: string, to: string, ohm: number, of?: string): NetworkElement => {
  return { id, kind: 'conductor', model: 'resistance', from, to, ohm, ...(of !== undefined && { of }) };
};
function shorted(elements: readonly NetworkElement[], node: string): ShortCircuit {
  const short = shortCircuit(elements, node, 'body');
  if (!short) throw new Error('No current flows.');
  return short;
}
const rounded = (list: readonly { readonly of: string; readonly currentA: number }[]) =>
  list.map(({ of, currentA }) => [of, Math.round(currentA * 1e6) / 1e6]);

/** By hand: 4 and 8 mohm are 12 mohm, 12 V drive 1,000 A. */
const one: readonly NetworkElement[] = [battery('b', 12, 0.004), line('tail', 'b+', 'in', 0.008)];

describe('the ways of a dead short', () => {
  test('arrive with a current above nothing, whichever end of them was written first', () => {
    const turned = [battery('b', 12, 0.004), line('tail', 'in', 'b+', 0.008)];
    for (const elements of [one, turned]) {
      const short = shorted(elements, 'in');
      expect(short.currentA).toBeCloseTo(1000, 6);
      expect(rounded(short.ways)).toEqual([['tail', 1000]]);
    }
  });

  test('are told by what they stand for, not by the piece of it', () => {
    const pieces = [
      battery('b', 12, 0.004),
      line('tail/1', 'b+', 'middle', 0.003, 'tail'),
      line('tail/2', 'middle', 'in', 0.005, 'tail'),
    ];
    const short = shorted(pieces, 'in');
    expect(rounded(short.ways)).toEqual([['tail', 1000]]);
    expect(short.shares.map(({ of, ohm }) => [of, ohm])).toEqual([
      ['b', 0.004],
      ['tail', 0.003],
      ['tail', 0.005],
    ]);
  });

  test('share the current by their conductance, and each share tells the resistance of its way', () => {
    // By hand: 6 and 3 mohm side by side are 2 mohm, with 4 mohm 6 mohm; 12 V drive 2,000 A, a third by the 6 mohm.
    const short = shorted(
      [battery('b', 12, 0.004), line('thin', 'b+', 'in', 0.006), line('thick', 'b+', 'in', 0.003)],
      'in',
    );
    expect(short.currentA).toBeCloseTo(2000, 6);
    const shares = Object.fromEntries(short.shares.map(({ of, share }) => [of, Math.abs(share)]));
    expect(shares).toMatchObject({
      b: expect.closeTo(1, 9),
      thin: expect.closeTo(1 / 3, 9),
      thick: expect.closeTo(2 / 3, 9),
    });
    expect(short.sources).toMatchObject([
      { id: 'b', currentA: expect.closeTo(2000, 6), postsV: expect.closeTo(4, 9) },
    ]);
  });

  test('leave out a line from the shorted node to the ground, which carries nothing', () => {
    const short = shorted([...one, line('load', 'in', 'body', 0.5)], 'in');
    expect(short.currentA).toBeCloseTo(1000, 6);
    expect(rounded(short.ways)).toEqual([['tail', 1000]]);
    expect(short.shares.map(({ of }) => of)).toEqual(['b', 'tail']);
  });

  test('leave out a line that ends nowhere near it', () => {
    const short = shorted([...one, line('on', 'b+', 'far', 0.01), line('off', 'x', 'y', 0.01)], 'in');
    expect(rounded(short.ways)).toEqual([['tail', 1000]]);
    expect(short.shares.map(({ of }) => of).toSorted()).toEqual(['b', 'on', 'tail']);
  });

  test('share out resistances alone: what draws a stated current stands in no sum of them', () => {
    // By hand: 12 V behind 4 mohm, of which 100 A are drawn at the post: (12 - 0.4) V over 12 mohm.
    const load: NetworkElement = {
      id: 'lamp',
      kind: 'load',
      model: 'current',
      from: 'b+',
      to: 'body',
      givenA: 100,
    };
    const short = shorted([...one, load], 'in');
    expect(short.currentA).toBeCloseTo(11.6 / 0.012, 6);
    expect(short.shares).toEqual([
      { of: 'b', ohm: 0.004, share: expect.any(Number) },
      { of: 'tail', ohm: 0.008, share: expect.any(Number) },
    ]);
  });

  test('are none where nothing drives a current', () => {
    expect(shortCircuit([line('load', 'in', 'body', 0.5)], 'in', 'body')).toBeNull();
    expect(
      shortCircuit([line('load', 'in', 'other', 0.5), line('on', 'other', 'body', 1)], 'in', 'body'),
    ).toBeNull();
  });
});
