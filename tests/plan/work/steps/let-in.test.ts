import { expect, test } from 'vitest';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { byId, smallPlan } from '../../plan-small-shop.ts';
import { inParts } from '../../shop-changes.ts';

const mountText = (...changes: readonly Change[]) =>
  byId(smallPlan(...changes).plan.steps, 'mount-boot').text;
const boot = 'sub: { part: woofer-a, in: boot }';
const box: readonly Change[] = [
  inParts(
    '  lead-a:\n',
    '  box-a:\n    kind: enclosure\n    title: Box\n    size: { width: 400 mm, depth: 380 mm, height: 330 mm }\n    mass: 19 kg\n    terminals: {}\n    volume: 35 L\n    loading: sealed\n  lead-a:\n',
  ),
  inJob(boot, `${boot}\n  box: { part: box-a, in: boot }`),
];

// The woofer of the small shop is 40 mm deep, 1.575 in: up to the next sixteenth 1 5/8; its maker tells no opening.
test('a speaker that is let into a panel has its opening and its depth measured there before it goes in', () => {
  expect(mountText()).toMatch(
    /sub asks for an opening by the template of its maker and 1 5\/8 in free behind it: measure both/,
  );
  const cut = inParts('band: subwoofer', 'band: subwoofer\n    cut-out: 142 mm');
  expect(mountText(cut)).toMatch(/sub asks for an opening .*142 mm.* across and 1 5\/8 in free behind it/);
  expect(mountText(cut)).toMatch(/look behind each hole for its screws/);
});

test('one that stands in a box is let into no panel', () => {
  expect(mountText(...box)).not.toContain('free behind it');
});
