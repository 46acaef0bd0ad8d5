import { describe, expect, test } from 'vitest';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';

/** The holder beside the battery with two holes of its own. */
const holes = inParts(
  'fuse-form: large-bolt-in\n    current: 200 A',
  'fuse-form: large-bolt-in\n    current: 200 A\n    mounting-holes: [{ x: 5 mm, y: 5 mm, diameter: 5 mm }, { x: 95 mm, y: 5 mm, diameter: 5 mm }]',
);
const held = (how: string): Change =>
  inJob('main-fuse: { part: holder-a, in: bay }', `main-fuse: { part: holder-a, in: bay, held: ${how} }`);

function fitted(...changes: readonly Change[]) {
  const { plan } = smallPlan(...changes);
  const text = plan.steps.find(({ id }) => id === 'mount-bay')?.text;
  const picked = plan.pick.filter(
    ({ part, suppliedWith }) => /screw|strap/.test(part) && suppliedWith === undefined,
  );
  return { text, picked: picked.map(({ part, quantity, short }) => ({ part, quantity, short })) };
}

describe('a part that stands on no board', () => {
  test('is screwed down through its holes, each screw of which is counted, and none ordered whose kind is not told', () => {
    expect(fitted(holes)).toEqual({
      text: 'Mount at bay: main-fuse (by 2 screws through its holes of 5 mm)',
      picked: [{ part: 'screw-for-hole-5-mm', quantity: 2, short: 0 }],
    });
  });

  test('has the screws of its bracket as well, and is told under what holds it', () => {
    const bracket = inParts(
      'fuse-form: large-bolt-in\n',
      'fuse-form: large-bolt-in\n    bracket-holes: [{ x: -8 mm, y: 5 mm, diameter: 4.2 mm }]\n',
    );
    expect(fitted(bracket, held('bracket'))).toEqual({
      text: 'Mount at bay: main-fuse (in a bracket, by 1 screw through its hole of 4.2 mm)',
      picked: [{ part: 'screw-for-hole-4.2-mm', quantity: 1, short: 0 }],
    });
  });

  // 1 kg is thrown forward with 20 g (from memory): two straps of 20 kg hold it, and of 5 kg four do.
  test('has as many straps on the pick list as hold it in a crash, one at each end at least', () => {
    const strap = (kg: number) =>
      addParts(`strap-a: { kind: fixing, title: Strap, form: strap, length: 1 m, holds: ${kg} kg }`);
    const straps = (kg: number) => fitted(held('strap'), strap(kg));
    expect(straps(20)).toEqual({
      text: 'Mount at bay: main-fuse (under a strap)',
      picked: [{ part: 'strap-a', quantity: 2, short: 2 }],
    });
    expect(straps(5).picked).toEqual([{ part: 'strap-a', quantity: 4, short: 4 }]);
  });

  test('is told by its name alone where nothing is known to hold it', () => {
    expect(fitted()).toEqual({ text: 'Mount at bay: main-fuse', picked: [] });
  });
});

describe('a speaker of whose frame no holes are told', () => {
  const rows = (...changes: readonly Change[]) =>
    smallPlan(...changes).plan.pick.filter(({ part }) => /screw/.test(part));

  test('has a set of screws on the pick list as it lies in its box, and takes none from the shelf', () => {
    expect(rows()).toMatchObject([
      { part: 'woofer-a-screws', quantity: 1, short: 0, suppliedWith: 'woofer-a' },
    ]);
  });

  test('has the screws of its holes in place of a set, where its part tells them', () => {
    const told = inParts(
      '    band: subwoofer\n',
      '    band: subwoofer\n    mounting-holes: [{ x: 5 mm, y: 5 mm, diameter: 5 mm }]\n',
    );
    expect(rows(told)).toMatchObject([{ part: 'screw-for-hole-5-mm', quantity: 1 }]);
  });
});
