import { describe, expect, test } from 'vitest';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { addParts, inParts } from '../../shop-changes.ts';

const box = inParts(
  '  lead-a:\n',
  '  box-a:\n    kind: enclosure\n    title: Box\n    size: { width: 400 mm, depth: 380 mm, height: 330 mm }\n    mass: 19 kg\n    terminals: {}\n    volume: 35 L\n    loading: sealed\n  lead-a:\n',
);
const boot = 'sub: { part: woofer-a, in: boot }';
const inBoot = inJob(boot, `${boot}\n  box: { part: box-a, in: boot }`);
const mountText = (...changes: readonly Change[]) =>
  smallPlan(...changes).plan.steps.find(({ id }) => id === 'mount-boot')?.text;

// By hand: 19 kg of box and 1 kg of speaker, thrown forward with 20 g (from memory): 20 kg x 20 x 9.80665 m/s2 = 3922.7 N.
test('a box at a place is held by bolts or straps, for its mass with that of its speaker', () => {
  expect(mountText(box, inBoot)).toMatch(
    /bolt or strap the box to sound metal .*it weighs 20 kg, and its fixings are to hold 3923 N forward; first look/,
  );
});

test('a place without a box asks for none', () => {
  expect(mountText(box)).not.toMatch(/strap/);
});

describe('a box that brackets hold', () => {
  const bracketed = inJob(boot, `${boot}\n  box: { part: box-a, in: boot, held: bracket }`);
  const bracket = (id: string, holds: number) =>
    addParts(`${id}: { kind: fixing, title: Bracket, form: bracket, holds: ${holds} kg }`);
  const picked = (held: Change, ...changes: readonly Change[]) =>
    smallPlan(box, held, ...changes).plan.pick.flatMap(({ part, quantity, short, title }) =>
      /bracket|box-holder/.test(part) ? [{ part, quantity, short, title }] : [],
    );

  test('is bolted by them, with the look behind each hole', () => {
    expect(mountText(box, bracketed)).toMatch(
      /bolt the box by its brackets, one at each end, to sound metal .*3923 N forward; first look/,
    );
  });

  // 3922.7 N over two brackets, and over the two bolts in each leg of them.
  test('has brackets and what they are bolted with on the order list, each with its load', () => {
    const rows = picked(bracketed);
    expect(rows.map(({ part, quantity, short }) => [part, quantity, short])).toEqual([
      ['box-bracket', 2, 2],
      ['bracket-bolt', 8, 8],
    ]);
    expect(rows.map(({ title }) => /for (\d+) N each/.exec(title)?.[1])).toEqual(['1962', '981']);
  });

  test('has brackets of the catalogue that hold it, and bolts for as many', () => {
    expect(picked(bracketed, bracket('bracket-150', 150))).toMatchObject([
      { part: 'bracket-150', quantity: 3 },
      { part: 'bracket-bolt', quantity: 12 },
    ]);
  });

  test('has either to be ordered where the job does not say which', () => {
    expect(picked(inBoot)).toMatchObject([{ part: 'box-holder', quantity: 2, short: 2 }]);
  });
});

describe('a box that straps hold', () => {
  const strapped = inJob(boot, `${boot}\n  box: { part: box-a, in: boot, held: strap }`);
  const strap = (id: string, holds: number) =>
    addParts(`${id}: { kind: fixing, title: Strap, form: strap, length: 1 m, holds: ${holds} kg }`);
  const picked = (...changes: readonly Change[]) =>
    smallPlan(box, strapped, ...changes).plan.pick.flatMap(({ part, quantity, title }) =>
      part.includes('strap') ? [{ part, quantity, title }] : [],
    );

  test('asks for no bolt and no look behind a hole, and tells the load', () => {
    const text = mountText(box, strapped);
    expect(text).toMatch(/by its straps.*are to hold 3923 N forward/);
    expect(text).not.toMatch(/bolt or strap|behind each hole/);
  });

  // 20 kg thrown forward with 20 g are 400 kg at rest.
  test('has two straps on the pick list, and as many as hold it where two do not', () => {
    expect(picked(strap('strap-250', 250), strap('strap-200', 200))).toMatchObject([
      { part: 'strap-200', quantity: 2 },
    ]);
    expect(picked(strap('strap-150', 150))).toMatchObject([{ part: 'strap-150', quantity: 3 }]);
  });

  test('has them to be ordered, with the load of each, where the catalogue has none', () => {
    expect(picked()).toMatchObject([{ part: 'box-strap', quantity: 2 }]);
    expect(picked()[0]?.title).toMatch(/for 19\d\d N each/);
  });
});
