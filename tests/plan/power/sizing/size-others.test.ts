import { describe, expect, test } from 'vitest';
import { awgSize } from '../../../../lib/model/quantity/wire-size.ts';
import type { SizedFuse } from '../../../../lib/plan/power/sizing/fuse-sizing.ts';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import { sizeOthers } from '../../../../lib/plan/power/sizing/size-others.ts';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { addParts, inParts } from '../../shop-changes.ts';
import { settledShop, sizedAnew } from '../settled-power.ts';

const turnOn = (instead: string): Change =>
  inJob('  turn-on: { from: radio.REM, to: amp.REM }', `  turn-on: { ${instead} }`);
/** A fused block behind the main fuse, whose way feeds the amplifier's turn-on. */
const fromWay = (how = 'length: 1 m'): readonly Change[] => [
  inJob('  sub: {', '  block: { part: block-a, in: boot, fuses: { OUT1: 20 A } }\n  sub: {'),
  inJob('  speaker: {', '  block-feed: { from: main-fuse.OUT, to: block.IN, length: 2 m }\n  speaker: {'),
  inJob('  control: { route: right-sill, links: [turn-on] }\n', ''),
  turnOn(`from: block.OUT1, to: amp.REM, ${how}`),
];

function others(changes: readonly Change[], fuse: Partial<SizedFuse> = {}, only?: (id: string) => boolean) {
  const { sizing: settled, power } = settledShop(...changes);
  const sizing = sizedAnew(settled);
  const fuses = power.fuses
    .filter(({ edge }) => only?.(edge.id) ?? true)
    .map((one) => (one.edge.id === 'block.OUT1' ? { ...one, ...fuse } : one));
  const least = new LeastSizes();
  const sized = sizeOthers({ ...sizing, least }, fuses);
  const wire = sized.get('turn-on');
  if (!wire) throw new Error('The turn-on wire is not sized.');
  return { sized, least, wire };
}
const stops = ({ wire }: ReturnType<typeof others>) =>
  wire.remarks.filter(({ rule }) => rule === 'turn-on-wire-under-fuse');

describe('a turn-on wire', () => {
  test('must carry what its source gives at most, whichever end that is', () => {
    expect(others([]).wire).toMatchObject({ role: 'turn-on', neededA: 0.3, chosen: 'computed', remarks: [] });
    expect(others([turnOn('from: amp.REM, to: radio.REM')]).wire.neededA).toBe(0.3);
    const silent = inParts('REM: { role: turn-on-out, current: 300 mA }', 'REM: { role: turn-on-out }');
    expect(others([silent]).wire.neededA).toBe(0);
  });

  test('from a fused way must carry what that lets through, the smaller of those in a row', () => {
    expect(others(fromWay()).wire.neededA).toBe(20);
    // Of 60 A and 100 A in a row the main fuse of 60 A is the less.
    expect(others(fromWay(), { ratingA: 100 }).wire.neededA).toBe(60);
  });

  test('counts a fuse without a lawful rating with its margin on what it carries, and one that is not known not at all', () => {
    // 4 A times 1.25, common practice, no source.
    expect(others(fromWay(), { ratingA: null, ratedA: 4 }).wire.neededA).toBe(5);
    expect(others(fromWay(), {}, (id) => id !== 'block.OUT1').wire.neededA).toBe(60);
    expect(others(fromWay(), {}, () => false).wire.neededA).toBe(Number.POSITIVE_INFINITY);
  });

  // 33 CFR 183.425, Table 5: 18 AWG of 105 C carries 20 A; at 50 C 0.85 of it, 17 A.
  test('that is given too thin for its fuse stops, with both figures; on the bound it does not', () => {
    const thin = others(fromWay('wire: blue-18, length: 1 m'));
    expect(stops(thin)).toEqual([
      {
        rule: 'turn-on-wire-under-fuse',
        level: 'stop',
        of: ['turn-on'],
        message: 'turn-on (18 AWG) carries 17 A, and the fuse before it lets 20 A through',
        value: 17,
        limit: 20,
        unit: 'A',
        remedy: expect.stringMatching(/smaller fuse/),
      },
    ]);
    expect(stops(others(fromWay('wire: blue-18, length: 1 m'), { ratingA: 17 }))).toEqual([]);
    expect(stops(others(fromWay('wire: blue-18, length: 1 m'), { ratingA: 18 }))).toHaveLength(1);
  });

  test('that nothing fits has one stop, not two', () => {
    // 18 AWG is the only reel for it, and must carry more than it may.
    const none = others(fromWay());
    expect(none.wire.remarks.map(({ rule, level }) => [rule, level])).toEqual([
      ['conductor-none-fits', 'stop'],
    ]);
  });
});

describe('every other conductor', () => {
  test('that is no part of the supply is sized, and none that is', () => {
    const { sized } = others([]);
    expect([...sized.keys()].toSorted()).toEqual(expect.arrayContaining(['signal', 'turn-on']));
    for (const id of ['feed', 'tail', 'ground']) expect(sized.has(id), id).toBe(false);
    const roles = new Set([...sized.values()].map(({ role }) => role));
    expect(roles).toEqual(new Set(['signal', 'speaker', 'turn-on']));
  });

  test('has nothing to carry but a turn-on wire, whose need is what it is told by', () => {
    for (const { role, neededA, remarks } of others([]).sized.values())
      if (role !== 'turn-on') expect([neededA, remarks]).toEqual([0, []]);
  });

  test('keeps the size that it came to: the next pass starts from it', () => {
    const { least, sized } = others([]);
    for (const [id, { cable }] of sized) expect(least.of(id).areaMm2, id).toBe(cable.size.areaMm2);
    const { sizing, power } = settledShop(
      addParts(
        'white-10: { kind: wire, title: "10 AWG", size: 10 AWG, insulation: 80 C, colour: WH, for: [speaker] }',
      ),
    );
    const grown = new LeastSizes();
    const wire = [...sized.values()].find(({ role }) => role === 'speaker');
    if (!wire) throw new Error('There is a speaker wire.');
    grown.raise(wire.link.id, awgSize('10').areaMm2, 'its loss');
    const again = sizeOthers({ ...sizing, least: grown }, power.fuses).get(wire.link.id);
    expect(again).toMatchObject({ cable: { size: { label: '10 AWG' } }, reason: '10 AWG: its loss' });
    expect(grown.of(wire.link.id)).toEqual({ areaMm2: awgSize('10').areaMm2, why: 'its loss' });
  });
});
