import { describe, expect, test } from 'vitest';
import { readContent } from '../../lib/read/read-content.ts';
import { expectProblem, partsFile } from './problem-case.ts';
import { type Change, smallShop } from './small-shop.ts';

const red8 = 'size: 8 AWG, insulation: 105 C, colour: RD';
const with8 = (figure: string): Change => [partsFile, red8, `${red8}, ${figure}`];

// ASTM B258: 8 AWG is 8.366 mm2 and 3.264 mm thick; of annealed copper it has 2.061 mohm/m at 20 C (IEC 60028).
describe('what is measured of a wire', () => {
  test('a resistance below that of its copper, a decimal point off', () => {
    expectProblem({
      name: 'too good',
      changes: [with8('measured: ^0.206 mohm/m')],
      says: /red-8 is written with 0\.206 mohm\/m, and 8 AWG of pure copper has 2\.06 mohm\/m/,
      remedy: /check the number and its unit/,
    });
  });

  test('a wire that is thinner than its copper', () => {
    expectProblem({
      name: 'too thin',
      changes: [with8('outside-diameter: ^3.2 mm')],
      says: /red-8 is written as 3\.2 mm thick, and 8 AWG without insulation is 3\.26 mm/,
      remedy: /over the insulation/,
    });
  });

  test.each(['measured: 1.9 mohm/m', 'measured: 3.4 mohm/m', 'outside-diameter: 6.6 mm'])(
    'may be %s for 8 AWG',
    (figure) => {
      expect(readContent(smallShop(with8(figure))).problems).toEqual([]);
    },
  );
});
