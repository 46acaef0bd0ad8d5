import { expect, test } from 'vitest';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { inParts } from '../../shop-changes.ts';

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
