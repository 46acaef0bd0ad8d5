import { describe, expect, test } from 'vitest';
import type { PlanWire } from '../../../lib/model/plan/index.ts';
import { boardTies, tieCount, tieFor } from '../../../lib/plan/wiring/ties.ts';
import { smallShop } from '../../read/small-shop.ts';
import { jobOf, smallPlan } from '../plan-small-shop.ts';
import { addParts } from '../shop-changes.ts';

const ties = addParts(
  'tie-long: { kind: fixing, title: Long, form: tie, length: 300 mm }',
  'tie-b: { kind: fixing, title: Short, form: tie, length: 100 mm }',
  'tie-a: { kind: fixing, title: Short too, form: tie, length: 100 mm }',
  'tie-hot: { kind: fixing, title: Hot, form: tie, length: 200 mm, withstands: 125 C }',
);
const job = () => jobOf(smallShop(ties));
const { value: tailM } = jobOf(smallShop()).rules['tie-tail'];
const { value: plainC } = jobOf(smallShop()).rules['tie-temperature'];

describe('a tie', () => {
  test('is the shortest that goes round with its tail, to the millimetre', () => {
    const widest = (0.1 - tailM) / Math.PI;
    expect(tieFor(job(), widest - 1e-6, 20)).toBe('tie-a');
    expect(tieFor(job(), widest + 1e-6, 20)).toBe('tie-hot');
    expect(tieFor(job(), (0.2 - tailM) / Math.PI + 1e-6, 20)).toBe('tie-long');
    expect(tieFor(job(), (0.3 - tailM) / Math.PI + 1e-6, 20)).toBeNull();
  });

  test('stands more than the ambient: by its part, else by the house rule', () => {
    expect(tieFor(job(), 0.01, plainC - 1)).toBe('tie-a');
    expect(tieFor(job(), 0.01, plainC)).toBe('tie-hot');
    expect(tieFor(job(), 0.01, 124)).toBe('tie-hot');
    expect(tieFor(job(), 0.01, 125)).toBeNull();
  });

  test('is the first by name of those alike, whichever stands first in the catalogue', () => {
    const lines = ['tie-a', 'tie-b', 'tie-c'].map(
      (id) => `${id}: { kind: fixing, title: Tie, form: tie, length: 100 mm }`,
    );
    for (const order of [lines, lines.toReversed()])
      expect(tieFor(jobOf(smallShop(addParts(...order))), 0.01, 20)).toBe('tie-a');
  });

  test('is a tie, and no other fixing', () => {
    expect(tieFor(jobOf(smallShop()), 0.001, 20)).toBeNull();
  });
});

test('ties stand at each spacing begun', () => {
  expect([0, 0.1, 0.2, 0.2001, 0.6].map((lengthM) => tieCount(lengthM, 0.2))).toEqual([0, 1, 1, 2, 3]);
  expect([tieCount(-1, 0.2), tieCount(1, 0), tieCount(1, -1)]).toEqual([0, 0, 0]);
});

describe('the ties of a board', () => {
  const spacingM = job().rules['tie-spacing-board'].value;
  type Route = Parameters<typeof boardTies>[1]['routes'][number];
  const route = (
    wire: string,
    layer: Route['layer'],
    ...points: readonly (readonly [number, number])[]
  ): Route => ({
    along: [wire],
    layer,
    points: points.map(([x, y]) => ({ xM: x * spacingM, yM: y * spacingM })),
  });
  const wires = (): readonly PlanWire[] => smallPlan(ties).plan.wires;
  const count = (...routes: readonly Route[]) => {
    const counts = boardTies(job(), { routes }, wires());
    return [...counts.values()].reduce((sum, n) => sum + n, 0);
  };

  test('are one for each square that a wire passes, both ways across', () => {
    expect(count(route('feed', 'power', [0.5, 0.5], [2.5, 0.5]))).toBe(3);
    expect(count(route('feed', 'power', [0.5, 0.5], [0.5, 2.5]))).toBe(3);
    expect(count(route('feed', 'power', [0.2, 0.2], [0.8, 0.8]))).toBe(1);
    expect(count(route('feed', 'power', [0.5, 0.5], [0.5, 1.5], [2.5, 1.5]))).toBe(4);
  });

  test('are shared by wires of one layer that pass the same square, and by no others', () => {
    const along = [
      [0.5, 0.5],
      [2.5, 0.5],
    ] as const;
    expect(count(route('feed', 'power', ...along), route('tail', 'power', ...along))).toBe(3);
    expect(count(route('feed', 'power', ...along), route('turn-on', 'signal', ...along))).toBe(6);
  });

  test('go round what is bound there: two thick wires ask for a longer one', () => {
    const of = (...routes: readonly Route[]) => [...boardTies(job(), { routes }, wires()).keys()];
    const here = [[0.2, 0.2]] as const;
    const one = of(route('feed', 'power', ...here));
    const many = ['feed', 'tail', 'ground'].map((id) => route(id, 'power', ...here));
    const lengthOf = (ids: readonly string[]) => (ids[0] === 'tie-a' ? 1 : ids[0] === 'tie-hot' ? 2 : 3);
    expect(one).toHaveLength(1);
    expect(lengthOf(of(...many))).toBeGreaterThanOrEqual(lengthOf(one));
  });

  test('are none on a board without wires', () => {
    expect(count()).toBe(0);
  });
});
