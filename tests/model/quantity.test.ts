import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type DimensionName,
  dimensions,
  exampleText,
  oneOf,
  parseNumber,
  parseQuantity,
  quantityIn,
  writeQuantity,
} from '../../lib/model/quantity/quantity.ts';

function isDimension(name: string): name is DimensionName {
  return Object.hasOwn(dimensions, name);
}
const names = Object.keys(dimensions).filter(isDimension);
const dimensionName = fc.constantFrom(...names);

describe('conversion factors', () => {
  // NIST SP 811 (2008), appendix B.8, to the digits printed there; those marked there as exact are exact here.
  test.each([
    ['length', '1 in', 2.54e-2],
    ['length', '1 ft', 3.048e-1],
    ['length', '1 cm', 1e-2],
    ['mass', '1 lb', 4.535924e-1],
    ['mass', '1 oz', 2.834952e-2],
    ['time', '1 min', 60],
    ['time', '1 h', 3600],
    ['torque', '1 lbf in', 1.129848e-1],
    ['torque', '1 lbf ft', 1.355818],
    ['charge', '1 Ah', 3600],
    ['volume', '1 ft3', 2.831685e-2],
    ['volume', '1 in3', 1.638706e-5],
    ['volume', '1 L', 1e-3],
  ] as const)('%s: %s is %d in SI', (dimension, written, si) => {
    expect(Number(parseQuantity(written, dimension)) / si).toBeCloseTo(1, 6);
  });

  // SI prefixes: NIST SP 811, table 5.
  test.each([
    ['length', '346 mm', 0.346],
    ['current', '300 mA', 0.3],
    ['voltage', '50 mV', 0.05],
    ['power', '1.2 kW', 1200],
    ['frequency', '2.5 kHz', 2500],
    ['resistance', '0.2 mohm', 0.0002],
    ['stress', '9 GPa', 9e9],
    ['lineResistance', '1.3 mohm/m', 0.0013],
    // One foot is 0.3048 m exactly: 1.588 / 304.8.
    ['lineResistance', '1.588 ohm/1000ft', 0.00521],
    ['ratio', '3 %', 0.03],
  ] as const)('%s: %s is %d in SI', (dimension, written, si) => {
    expect(parseQuantity(written, dimension)).toBeCloseTo(si, 6);
  });
});

describe('as a fabricator writes lengths', () => {
  // By hand: 13 5/8 in is 109/8 x 25.4 mm = 346.075 mm; 5 ft 3 in is 63 x 25.4 mm = 1600.2 mm.
  test.each([
    ['13 5/8 in', 0.346075],
    ['13-5/8"', 0.346075],
    ['13-5/8 in', 0.346075],
    ['13.625in', 0.346075],
    ['  13  5/8   in ', 0.346075],
    ['346mm', 0.346],
    [`5'3"`, 1.6002],
    [`5' 3"`, 1.6002],
    ['5 ft 3 in', 1.6002],
    [`5'-3"`, 1.6002],
    [`5'-3 1/2"`, 1.6129],
    [`12'`, 3.6576],
    ['-3/8 in', -0.009525],
    ['- 3 in', -0.0762],
    ['+3 in', 0.0762],
    ['.5 in', 0.0127],
    ['0 mm', 0],
    ['-0 mm', 0],
  ])('%s', (written, metres) => {
    expect(parseQuantity(written, 'length')).toBe(metres);
  });

  test('every mixed fraction of an inch down to 1/64 reads as its decimal', () => {
    const inches = fc.record({
      whole: fc.nat(200),
      under: fc.constantFrom(2, 4, 8, 16, 32, 64),
      share: fc.nat(63),
      between: fc.constantFrom(' ', '-'),
      unit: fc.constantFrom(' in', '"', 'in'),
    });
    fc.assert(
      fc.property(inches, ({ whole, under, share, between, unit }) => {
        const over = share % under;
        const read = parseQuantity(`${whole}${between}${over}/${under}${unit}`, 'length');
        // 64ths of an inch in tenths of a micrometre are whole: 25.4 mm / 64 = 396.875 um.
        const tenthsUm = (whole * 64 + over * (64 / under)) * 3968.75;
        expect(read).toBe(Number((tenthsUm / 1e7).toPrecision(12)));
      }),
    );
  });

  test('feet and inches are as long as the inches alone', () => {
    fc.assert(
      fc.property(fc.nat(40), fc.nat(11), fc.nat(15), (feet, inches, sixteenths) => {
        const together = parseQuantity(`${feet} ft ${inches} ${sixteenths}/16 in`, 'length');
        expect(together).toBe(parseQuantity(`${feet * 12 + inches} ${sixteenths}/16"`, 'length'));
      }),
    );
  });
});

describe('other quantities', () => {
  test.each([
    ['current', ' 20 A ', 20],
    ['current', '20A', 20],
    ['temperature', '85 C', 85],
    ['temperature', '-40 C', -40],
    ['level', '+3 dB', 3],
    ['level', '-3.5 dB', -3.5],
    ['angle', '-90 deg', -90],
    ['resistance', '3 ohms', 3],
    ['torque', '10 N m', 10],
  ] as const)('%s: %s', (dimension, written, si) => {
    expect(parseQuantity(written, dimension)).toBe(si);
  });
});

describe('refusals', () => {
  test.each([
    ['length', '12', '"12" has no unit'],
    ['length', '13 5/8', '"13 5/8" has no unit'],
    ['length', '-5', '"5" has no unit'],
    ['length', 'in', '"in" is not a length'],
    ['length', '', '"" is not a length'],
    ['length', '--5 in', '"-5 in" is not a length'],
    ['length', '13 9/8 in', '"13 9/8" is not a proper fraction'],
    ['length', '1/0 in', '"1/0" is not a proper fraction'],
    ['length', '1.5 1/2 in', '"1.5 1/2" is not a proper fraction'],
    ['length', `5' 13"`, 'has 12 inches or more'],
    ['length', `5'3/3"`, '"3/3" is not a proper fraction'],
    ['length', `5'3`, 'is not a unit of length'],
    ['length', '½ in', 'has a fraction in one character: write 1/2 in'],
    ['length', '13½ in', 'has a fraction in one character: write 13 1/2 in'],
    ['length', '13 5/8”', 'has a typeset quote mark: write 13 5/8"'],
    ['length', '5′3″', `has a typeset quote mark: write 5'3"`],
    ['length', "13''", 'has two marks of feet for inches: write 13"'],
    ['length', '13 5⁄8 in', 'has a typeset slash: write 13 5/8 in'],
    ['length', '13⅝ inches', 'has a fraction in one character: write 13 5/8 in'],
    ['length', '13 5 / 8 in', 'has a space beside the slash of its fraction: write 13 5/8 in'],
    ['length', '13 5/ 8 in', 'write 13 5/8 in'],
    ['length', '−3 in', 'has a typeset dash: write -3 in'],
    ['length', '13 inches', 'has its unit spelled out: write 13 in'],
    ['length', '2 feet 3 inches', 'has its unit spelled out: write 2 ft 3 in'],
    ['length', '5 parsecs', '"parsecs" is not a unit of length'],
    ['length', '1/7 in', 'is a fraction that no tape has, between 9/64 in and 5/32 in'],
    ['length', '13 1/3"', 'is a fraction that no tape has, between 13 21/64 in and 13 11/32 in'],
    ['length', `5' 3 1/10"`, 'no tape has, between 3 3/32 in and 3 7/64 in'],
    ['length', '1/7 ft', 'is a fraction that no tape has'],
    ['length', '3,5 in', 'has a comma in its number: write 3.5 in'],
    ['length', '1.200,5 mm', 'has a comma in its number: write 1200.5 mm'],
    ['voltage', '0,500 V', 'has a comma in its number: write 0.500 V'],
    ['resistance', '4 Ω', 'has its unit spelled out: write 4 ohm'],
    ['resistance', '3 mΩ', 'write 3 mohm'],
    ['resistance', '3 MΩ', '"MΩ" is not a unit of resistance'],
    ['temperature', '85 °C', 'write 85 C'],
    ['torque', '35 in-lb', 'write 35 lbf in'],
    ['current', '30 amps', 'write 30 A'],
    ['current', '2 x 30 A', 'is 2 values in one: write 30 A for each of them, 60 A for all together'],
    ['current', '2×30A', 'write 30A for each of them, 60 A for all together'],
    ['length', '2 x 3 inches', 'write 3 in for each of them, 6 in for all together'],
    ['mass', '2 x 30 A', '"x 30 A" is not a unit of mass'],
    ['length', '20 IN', 'did you mean in?'],
    ['length', '5 lb', '"lb" is not a unit of length (known: in, "'],
    ['power', '1,000 W', 'has a comma in its number: write 1000, or 1.000 if'],
    ['power', '1,5 kW', 'has a comma in its number: write 1.5 kW'],
    ['power', '1e3 W', 'has a power of ten in its number: write it in full'],
    ['current', '20 a', 'did you mean A?'],
    ['current', '20', '"20" has no unit'],
    ['current', '-20 A', "a current can't be negative"],
    ['current', '5 constructor', '"constructor" is not a unit of current'],
    ['current', '5 __proto__', '"__proto__" is not a unit of current'],
    ['voltage', '+5 V', 'leave out the +'],
    ['stress', '-1 Pa', "an elastic modulus can't be negative"],
    ['temperature', '185 F', '"185 F" is in degrees of Fahrenheit: write 85 C'],
    ['current', '1/0 AWG', '"1/0" is not a proper fraction'],
    ['current', '4 AWG', '"AWG" is not a unit of current'],
    ['length', `${'9'.repeat(400)} m`, 'is too large a number'],
  ] as const)('%s: %s', (dimension, written, fault) => {
    expect(parseQuantity(written, dimension)).toMatchObject({
      unreadable: expect.stringContaining(fault),
    });
  });

  test('what is told to be written can be read, and is no other value', () => {
    const meant = fc.record({
      whole: fc.nat(99),
      over: fc.constantFrom('1/2', '5/8', '3/16', '21/32'),
      slash: fc.constantFrom(' / ', '/ ', ' /', '⁄', '∕'),
      unit: fc.constantFrom('in', 'inches', 'inch', '″', "''"),
    });
    fc.assert(
      fc.property(meant, ({ whole, over, slash, unit }) => {
        const fault = parseQuantity(`${whole} ${over.replace('/', slash)} ${unit}`, 'length');
        if (typeof fault === 'number') throw new Error('it is no plain way of writing');
        const [, told = ''] = /: write (.*)$/.exec(fault.unreadable) ?? [];
        expect(parseQuantity(told, 'length')).toBe(parseQuantity(`${whole} ${over} in`, 'length'));
      }),
    );
  });

  test.each([1, 2, 4, 8, 16, 32, 64])('an inch in %d parts is on a tape', (parts) => {
    expect(parseQuantity(`2 ${parts === 1 ? '' : `1/${parts} `}in`, 'length')).toBeTypeOf('number');
  });

  test.each([3, 5, 6, 7, 9, 10, 12, 48, 128])('an inch in %d parts is on none', (parts) => {
    expect(parseQuantity(`2 1/${parts} in`, 'length')).toHaveProperty('unreadable');
  });

  test('a bare number is refused, whatever the dimension and the way of writing', () => {
    const bare = fc.oneof(
      fc.nat().map(String),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
      fc.tuple(fc.nat(99), fc.integer({ min: 2, max: 64 })).map(([a, b]) => `${a} 1/${b}`),
      fc.tuple(fc.nat(99), fc.integer({ min: 2, max: 64 })).map(([a, b]) => `${a}-1/${b}`),
    );
    fc.assert(
      fc.property(bare, dimensionName, (written, dimension) => {
        expect(parseQuantity(written, dimension)).toHaveProperty('unreadable');
      }),
    );
  });

  test('any text gives a finite number or a fault', () => {
    const near = fc.array(
      fc.constantFrom('1', '5/8', ' ', '-', '.', "'", '"', 'in', 'ft', 'A', 'e', ',', '½', '/0'),
    );
    const written = fc.oneof(
      fc.string({ unit: 'binary' }),
      near.map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(written, dimensionName, (text, dimension) => {
        const read = parseQuantity(text, dimension);
        if (typeof read === 'number') expect(Number.isFinite(read)).toBe(true);
        else expect(read.unreadable.length).toBeLessThan(400);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the table of dimensions', () => {
  test.each(names)('the examples of %s can be read', (dimension) => {
    for (const example of dimensions[dimension].examples)
      expect(parseQuantity(example, dimension)).toBeTypeOf('number');
  });

  test('a held number is written so that it reads back', () => {
    const magnitude = fc.double({ min: 1e-9, max: 1e12, noNaN: true });
    fc.assert(
      fc.property(magnitude, dimensionName, (value, dimension) => {
        const read = parseQuantity(writeQuantity(value, dimension), dimension);
        expect(Number(read) / value).toBeCloseTo(1, 10);
      }),
    );
  });

  test('charge and share are written in a unit that may be written', () => {
    expect(writeQuantity(252000, 'charge')).toBe('70 Ah');
    expect(writeQuantity(0.03, 'ratio')).toBe('3 %');
    expect(writeQuantity(0.346075, 'length')).toBe('0.346075 m');
    expect(writeQuantity(-40, 'temperature')).toBe('-40 C');
  });

  test('a dimension has its article and its examples as one phrase', () => {
    expect([oneOf('length'), oneOf('angle')]).toEqual(['a length', 'an angle']);
    expect(exampleText('length')).toBe('13 5/8 in, 13-5/8", 346 mm or 12 ft');
    expect(exampleText('voltage')).toBe('12.6 V');
  });

  test('no two dimensions are held in the same unit', () => {
    const units = names.map((name) => dimensions[name].si);
    expect(new Set(units).size).toBe(units.length);
  });
});

describe('written numbers', () => {
  test.each([
    ['13', 13],
    ['13.5', 13.5],
    ['5/8', 0.625],
    ['13 5/8', 13.625],
    ['13-5/8', 13.625],
    ['.5', 0.5],
    ['5.', null],
    ['1/0', null],
    ['8/8', null],
    ['1e3', null],
    ['0x10', null],
    ['١٢', null],
    ['', null],
  ])('%s', (written, value) => {
    expect(parseNumber(written)).toBe(value);
  });
});

describe('a quantity of a dimension among others', () => {
  const units = names.flatMap((name) => Object.keys(dimensions[name].units));
  const written = fc.record({
    sign: fc.constantFrom('', '-', '+', '- '),
    number: fc.constantFrom(
      '3',
      '3.5',
      '.5',
      '5/8',
      '13 5/8',
      "5' 3",
      '5 ft 3',
      '1,5',
      '3/7',
      '9e9',
      '2 x 30',
    ),
    space: fc.constantFrom('', ' ', '  '),
    unit: fc.constantFrom('', ...units, 'inches', 'rpm', 'constructor'),
  });

  test('is what it is read as, and none where it is none', () => {
    fc.assert(
      fc.property(written, dimensionName, ({ sign, number, space, unit }, name) => {
        const text = `${sign}${number}${space}${unit}`;
        const read = parseQuantity(text, name);
        expect(quantityIn(text, name)).toBe(typeof read === 'number' ? read : null);
      }),
      { numRuns: 2000 },
    );
  });
});
