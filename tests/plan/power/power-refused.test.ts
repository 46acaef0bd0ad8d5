import { describe, expect, test } from 'vitest';
import { placeText } from '../../../lib/model/place.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { expectProblem, inJob } from '../../read/problem-case.ts';
import { mark, smallShop, withoutMark } from '../../read/small-shop.ts';
import { inParts, inShop, inVehicle } from '../shop-changes.ts';

describe('what can not be read is told at its place', () => {
  test('a negative length', () => {
    expectProblem({
      name: 'negative length',
      changes: [inJob('length: 12 in', `length: ${mark}-12 in`)],
      says: /length/,
    });
  });

  test('an unknown port', () => {
    expectProblem({
      name: 'unknown port',
      changes: [inJob('to: main-fuse.IN', `to: ${mark}main-fuse.INN`)],
      says: /INN/,
    });
  });
});

describe('what nothing can be computed from is refused', () => {
  test.each([
    [
      'a battery without capacity',
      inParts('capacity: 70 Ah', `capacity: ${mark}0 Ah`),
      /capacity is not above zero/,
    ],
    [
      'a battery that gives nothing',
      inParts('cold-cranking: 600 A', `cold-cranking: ${mark}0 A`),
      /not above zero/,
    ],
    [
      'an alternator of no current',
      inParts('rating: 150 A', `rating: ${mark}0 A`),
      /rating is not above zero/,
    ],
    [
      'a supply of no voltage',
      inShop('stock:\n', `rules: { voltage-sizing: ${mark}0 V }\nstock:\n`),
      /voltage-sizing is below 10 V/,
    ],
    [
      'an efficiency of nothing',
      inShop('stock:\n', `rules: { efficiency-class-d: ${mark}0 % }\nstock:\n`),
      /efficiency-class-d is not above zero/,
    ],
    [
      'clad aluminium that does not conduct',
      inShop('stock:\n', `rules: { clad-conductivity: ${mark}0 % }\nstock:\n`),
      /clad-conductivity is not above zero/,
    ],
    [
      'a conductor below any cold',
      inShop('stock:\n', `rules: { conductor-temperature: ${mark}-50 C }\nstock:\n`),
      /conductor-temperature is not above -40/,
    ],
    // Each of these would have made a conductor too thin or a fuse too large without a word.
    [
      'clad aluminium that conducts better than copper',
      inShop('stock:\n', `rules: { clad-conductivity: ${mark}500 % }\nstock:\n`),
      /clad-conductivity is above 100 %/,
    ],
    [
      'loom that cools',
      inShop('stock:\n', `rules: { loom-factor: ${mark}800 % }\nstock:\n`),
      /loom-factor is above 100 %/,
    ],
    [
      'a supply of another voltage',
      inShop('stock:\n', `rules: { voltage-sizing: ${mark}48 V }\nstock:\n`),
      /voltage-sizing is above 18 V/,
    ],
    [
      'an alternator of another voltage',
      inParts('rating: 150 A', `rating: 150 A\n    set-point: ${mark}48 V`),
      /set-point is above 36 V/,
    ],
    [
      'a system that is not planned for',
      inVehicle('title: Estate car', `title: Estate car\nsystem-voltage: ${mark}48 V`),
      /system-voltage is no system voltage that is planned here; write 12 V or 24 V/,
    ],
    [
      'time-current data that rises',
      inParts(
        'rating: 60 A }',
        `rating: 60 A, time-current: ${mark}[{ multiple: 2, seconds: 5 s }, { multiple: 3, seconds: 6 s }] }`,
      ),
      /time-current does not fall/,
    ],
    [
      'a fuse under what it carries',
      inShop('stock:\n', `rules: { fuse-margin: ${mark}80 % }\nstock:\n`),
      /fuse-margin is below 100 %/,
    ],
    [
      'a battery that lasts the longer the harder it is run',
      inShop('stock:\n', `rules: { peukert-agm: ${mark}10 % }\nstock:\n`),
      /peukert-agm is below 100 %/,
    ],
    [
      'an amplifier that gives more than it takes',
      inParts(
        'amplifier-class: class-d',
        `amplifier-class: class-d, efficiency: { full: ${mark}150 %, eighth: 50 % }`,
      ),
      /full is above 100 %/,
    ],
    [
      'an amplifier that gives nothing of what it takes',
      inParts(
        'amplifier-class: class-d',
        `amplifier-class: class-d, efficiency: { full: 75 %, eighth: ${mark}0 % }`,
      ),
      /eighth is not above zero/,
    ],
    ['a device with a fuse of nothing', inParts('fuse: 60 A', `fuse: ${mark}0 A`), /fuse is not above zero/],
    ['a fuse of nothing', inParts('rating: 60 A', `rating: ${mark}0 A`), /rating is not above zero/],
    [
      'a wire without resistance',
      inParts(
        'size: 8 AWG, insulation: 105 C, colour: RD',
        `size: 8 AWG, measured: ${mark}0 mohm/m, colour: RD`,
      ),
      /measured is not above zero/,
    ],
    ['a coil of nothing', inParts('nominal: 4 ohm', `nominal: ${mark}0 ohm`), /nominal is below 0.25 ohm/],
    ['a rated power of nothing', inParts('power: 300 W', `power: ${mark}0 W`), /power is not above zero/],
    [
      'a port for no conductor',
      inParts(
        'GND: { role: supply-negative, joint: set-screw,',
        `GND: { role: supply-negative, conductors: ${mark}0, joint: set-screw,`,
      ),
      /conductors is not above zero/,
    ],
    [
      'a port whose largest conductor is smaller than its smallest',
      inParts(
        'OUT1: { role: feed-out, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
        `OUT1: { role: feed-out, joint: set-screw, takes: ${mark}{ from: 4 AWG, to: 8 AWG } }`,
      ),
      /takes runs downwards: the smaller value, or the thinner conductor, stands first/,
    ],
    [
      'a battery of no resistance by the house rules',
      inShop('stock:\n', `rules: { battery-resistance-agm: ${mark}0 ohm }\nstock:\n`),
      /battery-resistance-agm is not above zero/,
    ],
    [
      'a battery that gives no current',
      inParts('cold-cranking: 600 A', `cold-cranking: 600 A\n    resistance: ${mark}4 ohm`),
      /resistance is above 1 ohm/,
    ],
    [
      'a strip length below zero',
      inParts(
        'OUT1: { role: feed-out, joint: set-screw,',
        `OUT1: { role: feed-out, strip: ${mark}-5 mm, joint: set-screw,`,
      ),
      /strip is not above zero/,
    ],
    [
      'a conductor as thick as an arm',
      inJob('to: amp.B+ }', `to: amp.B+, size: ${mark}5000 mm2 }`),
      /size: "5000 mm2" is not a conductor size made here/,
    ],
    [
      'a length that reaches the moon',
      inJob('length: 12 in', `length: ${mark}1000000000 m`),
      /"1000000000 m" is more than 1000 m, beyond anything in a vehicle: check the number and its unit/,
    ],
    [
      'an amplifier of a power station',
      inParts('power: 300 W', `power: ${mark}1000000 W`),
      /is more than 100000 W/,
    ],
  ])('%s', (name, change, says) => {
    const { files, place } = withoutMark(smallShop(change));
    const told = readContent(files).problems.map(({ where, message }) => `${placeText(where)} ${message}`);
    expect(told, name).toContainEqual(expect.stringMatching(says));
    expect(told.some((text) => text.startsWith(place))).toBe(true);
  });
});
