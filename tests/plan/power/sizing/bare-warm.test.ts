import { expect, test } from 'vitest';
import type { Link } from '../../../../lib/model/content/resolved-job.ts';
import { bareWarmAmpacityA, greatestAmpacityA } from '../../../../lib/plan/power/sizing/conductor-sizing.ts';
import type { RunZone } from '../../../../lib/power/conductor/ampacity.ts';
import { inJob } from '../../../read/problem-case.ts';
import { type Change, smallShop } from '../../../read/small-shop.ts';
import { byId, jobOf } from '../../plan-small-shop.ts';
import { addParts } from '../../shop-changes.ts';

const cabin: RunZone = { zone: 'cabin', ambientC: 50, engineSpace: false, covered: false, bundleCount: 1 };
const bay: RunZone = { zone: 'engine-bay', ambientC: 85, engineSpace: true, covered: false, bundleCount: 1 };
/** A reel of 1/0 AWG, and what brings it into the port of the amplifier, which is for 4 AWG at most. */
const reduced = addParts(
  'red-0: { kind: wire, title: "1/0", size: 1/0 AWG, insulation: 105 C, colour: RD, for: [power] }',
  'reducer-0: { kind: terminal, title: R, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG }',
);

function feed(ask: typeof greatestAmpacityA, zone: RunZone, ...changes: readonly Change[]): number {
  const job = jobOf(smallShop(...changes));
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const link: Link = byId(job.links, 'feed');
  return ask(job, devices, link, 'power', [zone]);
}

// 33 CFR 183.425, Table 5: 4 AWG of 105 C carries 160 A at 30 C, 0.85 of it at 50 C; 1/0 AWG 285 A. At 85 C the square
// root of (105 - 85) / (105 - 30) is left, 0.51: 82 A.
test('what goes in by a reducer is not among what a port takes bare', () => {
  expect(feed(greatestAmpacityA, cabin, reduced)).toBe(242);
  expect(feed(bareWarmAmpacityA, cabin, reduced)).toBe(136);
});

test('the true ambient of the way counts, and not the published figure of an engine space', () => {
  expect(feed(bareWarmAmpacityA, bay)).toBeLessThanOrEqual(82.7);
  expect(feed(bareWarmAmpacityA, bay)).toBeGreaterThan(81);
  expect(feed(greatestAmpacityA, bay)).toBe(136);
});

test('a size that is written is not bounded', () => {
  const given = inJob('to: amp.B+ }', 'to: amp.B+, size: 8 AWG }');
  expect(feed(bareWarmAmpacityA, bay, given)).toBe(Number.POSITIVE_INFINITY);
});
