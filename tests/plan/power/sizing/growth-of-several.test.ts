import { describe, expect, test } from 'vitest';
import { conductorSizer } from '../../../../lib/plan/power/sizing/conductor-sizer.ts';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import type { PowerSizing } from '../../../../lib/plan/power/sizing/power-sizing.ts';
import { sizeForDrop } from '../../../../lib/plan/power/sizing/size-for-drop.ts';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { addParts, inShop } from '../../shop-changes.ts';
import { settledShop } from '../settled-power.ts';

const device = (text: string): Change => inJob('  sub: {', `  ${text}\n  sub: {`);
const links = (...texts: readonly string[]): Change =>
  inJob('  speaker: {', `${texts.map((text) => `  ${text}\n`).join('')}  speaker: {`);
const fuse = inJob('holder-a, in: bay', 'holder-a, in: bay, fuse: 30 A');

/** Reels of 6 AWG between the 8 and 4 AWG of the shop, all long. */
const reels: readonly Change[] = [
  addParts(
    'red-6: { kind: wire, title: "6 AWG red", size: 6 AWG, insulation: 105 C, colour: RD, for: [power] }',
    'black-6: { kind: wire, title: "6 AWG black", size: 6 AWG, insulation: 105 C, colour: BK, for: [ground] }',
  ),
  inShop('  red-8: {', '  red-6: { reels: [200 ft] }\n  black-6: { reels: [200 ft] }\n  red-8: {'),
  inShop('red-8: { reels: [30 ft]', 'red-8: { reels: [200 ft]'),
  inShop('red-4: { reels: [30 ft]', 'red-4: { reels: [200 ft]'),
];

/** Two amplifiers, each with a fuse, feed and ground of its own; lengths in metres. */
function twoAmps(feedM: number, otherM: number, change: (sizing: PowerSizing) => PowerSizing = (own) => own) {
  const { sizing: settled } = settledShop(
    fuse,
    ...reels,
    inJob('to: amp.B+ }', `to: amp.B+, length: ${feedM} m }`),
    device('fuse-2: { part: holder-a, in: bay, fuse: 30 A }'),
    device('amp-2: { part: amp-a, in: boot }'),
    links(
      'tail-2: { from: battery.POS, to: fuse-2.IN, length: 6 in }',
      `feed-2: { from: fuse-2.OUT, to: amp-2.B+, length: ${otherM} m }`,
      'ground-2: { from: amp-2.GND, to: body.cargo, length: 12 in }',
    ),
  );
  // The second has no speakers: it is taken to play what the first does.
  const first = settled.loads.find(({ item }) => item === 'amp');
  if (!first) throw new Error('The first amplifier draws nothing.');
  const loads = settled.loads.map((load) => (load.item === 'amp-2' ? { ...first, item: 'amp-2' } : load));
  const sizing = change({ ...settled, loads, least: new LeastSizes() });
  const { conductors } = sizeForDrop(sizing);
  const sizeOf = (id: string) => conductors.get(id)?.cable.size.label;
  return { sizing, sizeOf, whyOf: (id: string) => conductors.get(id)?.reason ?? '' };
}

describe('of two amplifiers', () => {
  test('the way of the one that misses its limit grows, not that of the other', () => {
    const { sizeOf } = twoAmps(2.8, 1);
    expect(['feed', 'feed-2'].map(sizeOf)).toEqual(['6 AWG', '8 AWG']);
    const other = twoAmps(1, 2.8);
    expect(['feed', 'feed-2'].map(other.sizeOf)).toEqual(['8 AWG', '6 AWG']);
  });

  test('both grow where both miss theirs, each told with its own', () => {
    const { sizeOf, whyOf } = twoAmps(2.8, 2.8);
    expect(['feed', 'feed-2'].map(sizeOf)).toEqual(['6 AWG', '6 AWG']);
    expect(whyOf('feed')).toMatch(/with 8 AWG amp would lose/);
    expect(whyOf('feed-2')).toMatch(/with 8 AWG amp-2 would lose/);
  });

  test('one that no size helps keeps nothing it grew by, and the other still grows', () => {
    const { sizeOf } = twoAmps(14, 2.8);
    expect(['feed', 'feed-2'].map(sizeOf)).toEqual(['8 AWG', '6 AWG']);
  });
});

test('a conductor grows to no size that does not bend on its board, and to any that does', () => {
  const under = (mm2: number) => (own: PowerSizing) => ({
    ...own,
    sizer: conductorSizer(own.job, own.devices, own.circuit.roles, new Map([['feed', mm2]])),
  });
  // 6 AWG is 13.3 mm2, 4 AWG 21.1 mm2.
  expect(twoAmps(2.8, 1).sizeOf('feed')).toBe('6 AWG');
  expect(twoAmps(2.8, 1, under(13)).sizeOf('feed')).toBe('8 AWG');
  expect(twoAmps(2.8, 1, under(14)).sizeOf('feed')).toBe('6 AWG');
});
