import { describe, expect, test } from 'vitest';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import { sizePower } from '../../../../lib/plan/power/sizing/size-power.ts';
import { cableSm } from '../../../../lib/power/conductor/conductor-choice.ts';
import { usualRules } from '../../../power/usual-rules.ts';
import { inJob, withBoard } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { addParts, inParts, inShop } from '../../shop-changes.ts';
import { settledShop, sizedAnew } from '../settled-power.ts';

const ports = (terminal: 'B+' | 'GND', role: string, most: string, conductors: number) =>
  inParts(
    `${terminal}: { role: ${role}, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }`,
    `${terminal}: { role: ${role}, joint: set-screw, takes: { from: 8 AWG, to: ${most} }, conductors: ${conductors} }`,
  );
/** The amplifier with two feeds of 4 AWG into its port, each behind its own fuse, and a ground post for several. */
const twoFeeds = (most = '1/0 AWG'): readonly Change[] => [
  ports('B+', 'supply-positive', '4 AWG', 2),
  ports('GND', 'supply-negative', most, 4),
  inJob('  sub: {', '  second-fuse: { part: holder-a, in: bay, fuse: 30 A }\n  sub: {'),
  inJob('holder-a, in: bay }', 'holder-a, in: bay, fuse: 30 A }'),
  inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }'),
  inJob(
    '  speaker: {',
    `  second-tail: { from: battery.POS, to: second-fuse.IN, length: 6 in }
  second: { from: second-fuse.OUT, to: amp.B+, length: 3 m, size: 4 AWG }
  speaker: {`,
  ),
];
const secondGround = (text = '') =>
  inJob(
    '  turn-on: {',
    `  other-ground: { from: amp.GND, to: body.cargo, length: 12 in${text} }\n  turn-on: {`,
  );
const reel = (awg: string, stock = '30 ft'): readonly Change[] => [
  addParts(
    `black-${awg.replace('/', '-')}: { kind: wire, title: "${awg} AWG", size: ${awg} AWG, insulation: 105 C, colour: BK, for: [ground] }`,
  ),
  inShop('  black-8: {', `  black-${awg.replace('/', '-')}: { reels: [${stock}] }\n  black-8: {`),
];

function grounds(...changes: readonly Change[]) {
  const sizing = sizedAnew(settledShop(...changes).sizing);
  const least = new LeastSizes();
  const { conductors } = sizePower({ ...sizing, least });
  const sm = (ids: readonly string[]) =>
    ids.reduce((sum, id) => {
      const one = conductors.get(id);
      return sum + (one ? cableSm(one.cable, usualRules) : 0);
    }, 0);
  return { label: (id: string) => conductors.get(id)?.cable.size.label, sm, conductors, least };
}

// 4 AWG has 41,742 circular mils, 2 AWG 66,369, 1 AWG 83,694 (ASTM B258): two feeds of 4 AWG ask for 83,484.
describe('the grounds of a device together conduct at least as well as its feeds together', () => {
  test('one ground grows until it does, and says for whom', () => {
    const { label, conductors, sm } = grounds(...twoFeeds(), ...reel('2'), ...reel('1'));
    expect(label('ground')).toBe('1 AWG');
    expect(sm(['ground'])).toBeGreaterThanOrEqual(sm(['feed', 'second']) * (1 - 1e-3));
    expect(conductors.get('ground')?.reason).toMatch(/as large as its feed .*4 AWG/);
  });

  test('two grounds share it: none grows where together they do', () => {
    const { label } = grounds(...twoFeeds(), ...reel('2'), ...reel('1'), secondGround());
    expect([label('ground'), label('other-ground')]).toEqual(['4 AWG', '4 AWG']);
  });

  test('a given one stays, the open one beside it makes up for it', () => {
    const { label, sm } = grounds(...twoFeeds(), ...reel('2'), ...reel('1'), secondGround(', size: 8 AWG'));
    expect(label('other-ground')).toBe('8 AWG');
    // 83,484 less the 16,509 of 8 AWG are 66,975: 2 AWG is just short of it.
    expect(label('ground')).toBe('1 AWG');
    expect(sm(['ground', 'other-ground'])).toBeGreaterThanOrEqual(sm(['feed', 'second']));
  });

  test('grows no further than its port takes, and ends', () => {
    const { label } = grounds(...twoFeeds('2 AWG'), ...reel('2'), ...reel('1'));
    expect(label('ground')).toBe('2 AWG');
  });

  test('grows no further than there are reels', () => {
    expect(grounds(...twoFeeds(), ...reel('2')).label('ground')).toBe('2 AWG');
  });

  test('keeps what it came to for the next pass', () => {
    const { least } = grounds(...twoFeeds(), ...reel('2'), ...reel('1'));
    expect(least.of('ground').areaMm2).toBeCloseTo(42.41, 1);
  });

  test('several grow in turn, the thinnest first', () => {
    // Three feeds of 4 AWG ask for 125,226 circular mils: twice 2 AWG, and not 1 AWG beside 4 AWG.
    const third = inJob(
      '  turn-on: {',
      `  other-ground: { from: amp.GND, to: body.cargo, length: 12 in }
  third: { from: second-fuse.OUT, to: amp.B+, length: 3 m, size: 4 AWG }
  turn-on: {`,
    );
    const { label } = grounds(...twoFeeds(), ...reel('2'), ...reel('1'), third);
    expect([label('ground'), label('other-ground')]).toEqual(['2 AWG', '2 AWG']);
  });

  test('a device with one feed needs no more than that', () => {
    const { label } = grounds(
      ports('GND', 'supply-negative', '1/0 AWG', 4),
      inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }'),
      inJob('holder-a, in: bay }', 'holder-a, in: bay, fuse: 30 A }'),
      ...reel('2'),
    );
    expect(label('ground')).toBe('4 AWG');
  });

  test('of two of a board that are as thin, the one that carries more grows', () => {
    // 8 AWG has 16,509 circular mils: two of them are short of the 41,742 of the feed, one in 4 AWG is not.
    const { label } = grounds(
      withBoard(),
      addParts(
        'amp-less: { kind: amplifier, title: A, size: { width: 100 mm, depth: 80 mm, height: 40 mm }, mass: 1 kg, supply: { type: regulated, fuse: 30 A, amplifier-class: class-d }, channels: {}, terminals: { B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }, GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } } } }',
      ),
      inParts('OUT1: { from: IN, fuse-form: maxi-blade }', 'OUT1, OUT2: { from: IN, fuse-form: maxi-blade }'),
      inParts('      OUT1: { role: feed-out', '      OUT1, OUT2: { role: feed-out'),
      inJob('    in: boot\n    settings', '    on: main\n    settings'),
      inJob(
        '  sub: {',
        '  block: { part: block-a, on: main }\n  less: { part: amp-less, on: main }\n  sub: {',
      ),
      inJob(
        '  feed: { from: main-fuse.OUT, to: amp.B+ }',
        `  feed: { from: main-fuse.OUT, to: block.IN, size: 4 AWG }
  feed-amp: { from: block.OUT1, to: amp.B+ }
  feed-less: { from: block.OUT2, to: less.B+ }
  earth-less: { from: less.GND, to: body.cargo, length: 12 in }`,
      ),
    );
    expect([label('ground'), label('earth-less')]).toEqual(['4 AWG', '8 AWG']);
  });
});
