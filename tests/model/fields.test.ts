import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { shopSchema } from '../../lib/model/content/shop.ts';
import {
  count,
  day,
  id,
  measured,
  positiveNumber,
  privateText,
  quantity,
  quantityAbove,
  quantityWithin,
  terminalRef,
  text,
  wireSize,
} from '../../lib/model/fields.ts';
import { Private } from '../../lib/model/private.ts';
import { type DimensionName, dimensions } from '../../lib/model/quantity/quantity.ts';

/** What a field says of a value that it refuses; null where it takes it. */
function refusal(schema: z.ZodType, value: unknown): string | null {
  const parsed = schema.safeParse(value);
  return parsed.success ? null : parsed.error.issues.map((issue) => issue.message).join(' | ');
}

function isDimension(name: string): name is DimensionName {
  return Object.hasOwn(dimensions, name);
}

describe('text', () => {
  test('keeps a text as it is', () => {
    expect(text('Front').parse(' two words ')).toBe(' two words ');
  });

  test.each([
    [12, 'is read as a number, but a text is needed: put quotes round it'],
    [true, 'is read as a boolean, but a text is needed: put quotes round it'],
    [null, 'needs a text, such as Front'],
    [['a'], 'needs a text, such as Front'],
    ['', 'is empty; write a text such as Front'],
    [' \n', 'is empty; write a text such as Front'],
  ])('refuses %j', (value, message) => {
    expect(refusal(text('Front'), value)).toBe(message);
  });
});

describe('id', () => {
  test.each(['amp', 'amp-front', '2-way', 'a1-b2'])('takes %s', (value) => {
    expect(id.parse(value)).toBe(value);
  });
  test.each(['Amp', 'amp_front', '-amp', 'amp-', 'a--b', 'a b', '', 'é', 'amp\n', '../amp', 'a.b'])(
    'refuses %j',
    (value) => {
      expect(refusal(id, value)).toMatch(/^is not an id: use lower case letters/);
    },
  );
});

describe('reference to a terminal', () => {
  test.each(['amp-front.B+', 'amp.1R-', 'fuse-1.LINE'])('takes %s', (value) => {
    expect(terminalRef.parse(value)).toBe(value);
  });
  test.each(['amp-front', '.B+', 'amp.', 'Amp.B+', 'amp.a.b', 'amp.B +'])('refuses %j', (value) => {
    expect(refusal(terminalRef, value)).toMatch(/^is not a terminal: write device.TERMINAL/);
  });
});

describe('day', () => {
  // Leap years of the Gregorian calendar (ISO 8601): 2000 and 2024 are, 1900 and 2026 are not.
  test.each(['2026-03-14', '2000-02-29', '2024-02-29'])('takes %s', (value) => {
    expect(day.parse(value)).toBe(value);
  });
  test.each(['1900-02-29', '2026-02-29', '2026-13-01', '30.02.2026', 20260314, null])(
    'refuses %j',
    (value) => {
      expect(refusal(day, value)).toBe('is not a date: write year-month-day, such as 2026-03-14');
    },
  );
  test.each([
    ['2026-3-14', '2026-03-14'],
    ['14.03.2026', '2026-03-14'],
    ['11/30/2026', '2026-11-30'],
    ['3/4/2026', '2026-03-04 or 2026-04-03'],
  ])('refuses %j with the day that it may be', (value, day_) => {
    expect(refusal(day, value)).toBe(`is not a date: write year-month-day, ${day_}`);
  });
});

describe('quantity', () => {
  test('is held as its SI number and written so that it reads back', () => {
    expect(quantity('length').decode('13 5/8 in')).toBe(0.346075);
    for (const [dimension, written] of [
      ['length', '13 5/8 in'],
      ['charge', '70 Ah'],
      ['ratio', '3 %'],
      ['torque', '35 lbf in'],
      ['resistance', '0.2 mohm'],
      ['temperature', '-40 C'],
    ] as const) {
      const field = quantity(dimension);
      const held = field.decode(written);
      expect(field.decode(field.encode(held))).toBe(held);
    }
  });

  test.each([
    [12, 'is a bare number, but a voltage needs its unit: write 12.6 V'],
    [null, 'needs a voltage, such as 12.6 V'],
    [{}, 'needs a voltage, such as 12.6 V'],
    ['12', '"12" has no unit; write a voltage such as 12.6 V'],
    ['12 A', '"A" is not a unit of voltage (known: V, mV); write a voltage such as 12.6 V'],
    [
      '5 constructor',
      '"constructor" is not a unit of voltage (known: V, mV); write a voltage such as 12.6 V',
    ],
  ])('refuses %j', (value, message) => {
    expect(refusal(quantity('voltage'), value)).toBe(message);
  });

  // 1 km of wire, 100 kA into a short, 10,000 Ah: nothing round a vehicle comes near.
  test.each([
    ['length', '1001 m', '"1001 m" is more than 1000 m'],
    ['length', '-1001 m', '"-1001 m" is less than -1000 m'],
    ['current', '101 kA', '"101 kA" is more than 100000 A'],
    ['charge', '10001 Ah', '"10001 Ah" is more than 10000 Ah'],
    ['temperature', '-101 C', '"-101 C" is less than -100 C'],
  ] as const)('a %s of %s is beyond anything in a vehicle', (dimension, written, message) => {
    expect(refusal(quantity(dimension), written)).toContain(`${message}, beyond anything in a vehicle`);
  });

  test.each([
    ['length', '1000 m'],
    ['length', '-1000 m'],
    ['current', '100 kA'],
    ['temperature', '-100 C'],
  ] as const)('a %s of %s may be meant', (dimension, written) => {
    expect(refusal(quantity(dimension), written)).toBeNull();
  });

  test('the examples of every dimension keep its bounds', () => {
    for (const dimension of Object.keys(dimensions).filter(isDimension))
      for (const example of dimensions[dimension].examples)
        expect(refusal(quantity(dimension), example), dimension).toBeNull();
  });

  test('bounds may be reached, but what it must be above may not', () => {
    const voltage = quantityWithin('voltage', { least: 10, most: 18 });
    expect(['10 V', '18 V'].map((written) => refusal(voltage, written))).toEqual([null, null]);
    expect(refusal(voltage, '9.9 V')).toBe('is below 10 V; write a voltage such as 12.6 V');
    expect(refusal(voltage, '18.1 V')).toBe('is above 18 V; write a voltage such as 12.6 V');
    expect(refusal(quantityAbove('current'), '0 A')).toMatch(/^is not above zero/);
    expect(refusal(quantityAbove('current'), '1 mA')).toBeNull();
  });

  test('an angle has its own article', () => {
    expect(refusal(quantity('angle'), 5)).toBe('is a bare number, but an angle needs its unit: write 90 deg');
  });

  test('its examples go into the JSON Schema one by one, each valid', () => {
    const { examples } = z.toJSONSchema(quantity('length'), { io: 'input' });
    expect(examples).toEqual(['13 5/8 in', '13-5/8"', '346 mm', '12 ft']);
  });
});

describe('conductor size', () => {
  test.each([
    ['4 AWG', '4 AWG'],
    ['1/0 AWG', '1/0 AWG'],
    ['1/0AWG', '1/0 AWG'],
    ['16 mm2', '16 mm2'],
    ['2.50 mm²', '2.5 mm2'],
  ])('%s is printed as %s', (written, label) => {
    const size = wireSize.decode(written);
    expect(size.label).toBe(label);
    expect(wireSize.encode(size)).toBe(label);
  });

  // ASTM B258: 12 AWG is 6530 circular mils, and 4/0 AWG 211 600; 1 circular mil is 5.067075E-10 m2 (NIST SP 811).
  test.each([
    ['12 AWG', 6530],
    ['4/0 AWG', 211_600],
  ])('%s has %d circular mils', (written, circularMils) => {
    const areaM2 = wireSize.decode(written).areaMm2 * 1e-6;
    expect(areaM2 / (circularMils * 5.067075e-10)).toBeCloseTo(1, 3);
  });

  test.each(['5 AWG', '5/0 AWG', '4', '0 mm2', '-4 AWG', '4 AWG x'])('refuses %j', (written) => {
    expect(refusal(wireSize, written)).toMatch(/is not a conductor size made here/);
  });
  test('refuses a bare number', () => {
    expect(refusal(wireSize, 4)).toBe('is a bare number: write 4 AWG, or 4 mm2 where it is an area');
    expect(refusal(wireSize, 5)).toBe(
      'needs a conductor size with its unit, such as 4 AWG, 1/0 AWG or 16 mm2',
    );
  });
});

describe('private text', () => {
  test('is held as a private value and read back only where asked', () => {
    const field = privateText('A. Customer');
    const held = field.decode('B. Owner');
    expect(held).toBeInstanceOf(Private);
    expect(held.reveal()).toBe('B. Owner');
    expect(field.encode(held)).toBe('B. Owner');
  });

  test.each([5550123, true, ''])('a refusal of %j does not repeat it', (value) => {
    const said = refusal(privateText('A. Customer'), value);
    expect(said).toMatch(/text/);
    if (value !== '') expect(said).not.toContain(String(value));
  });
});

describe('count', () => {
  test.each([0, 1, 40])('takes %d', (value) => {
    expect(count.parse(value)).toBe(value);
  });
  test.each([
    [1.5, 'needs a whole number, such as 2'],
    ['2', 'needs a whole number, such as 2'],
    [1e300, 'needs a whole number, such as 2'],
    [Number.NaN, 'needs a whole number, such as 2'],
    [-1, 'is below zero; write a whole number such as 2'],
  ])('refuses %j', (value, message) => {
    expect(refusal(count, value)).toBe(message);
  });
});

test('a reading may be below zero: a meter shows which way the current flows', () => {
  expect(measured.parse('-0.042 V')).toEqual({ dimension: 'voltage', value: -0.042 });
  expect(measured.parse('13.9 V')).toEqual({ dimension: 'voltage', value: 13.9 });
  expect(measured.safeParse('--1 V').success).toBe(false);
});

describe('what is written otherwise is told with what to write', () => {
  const messageOf = (schema: z.ZodType, value: unknown): string =>
    schema.safeParse(value).error?.issues[0]?.message ?? '';

  test.each([
    ['4 ga', '4 AWG'],
    ['4 gauge', '4 AWG'],
    ['AWG 4', '4 AWG'],
    ['#12', '12 AWG'],
    ['4 awg', '4 AWG'],
    ['00 AWG', '2/0 AWG'],
    ['0 gauge', '1/0 AWG'],
    ['1 / 0 AWG', '1/0 AWG'],
    ['2,5 mm2', '2.5 mm2'],
    ['16 mm^2', '16 mm2'],
    ['16 sq mm', '16 mm2'],
  ])('a conductor size: %s', (written, meant) => {
    expect(messageOf(wireSize, written)).toBe(
      `"${written}" is not how a conductor size is written: write ${meant}`,
    );
    expect(wireSize.safeParse(meant).success).toBe(true);
  });

  test.each(['5 AWG wire', '1,000 mm2', '4', '99 ga'])('no size is guessed from %s', (written) => {
    expect(messageOf(wireSize, written)).toContain('not a conductor size made here');
  });

  test('a pure number with a decimal comma', () => {
    expect(messageOf(positiveNumber, '0,71')).toBe('is written with a comma: write 0.71');
    expect(messageOf(positiveNumber, 'many')).toBe('needs a number, such as 200');
  });

  test('a quantity, in one sentence that says what to write once', () => {
    expect(messageOf(quantity('length'), '13 inches')).toBe(
      '"13 inches" has its unit spelled out: write 13 in',
    );
    expect(messageOf(measured, '13,9 V')).toBe('"13,9 V" has a comma in its number: write 13.9 V');
  });

  test.each([
    ['sheets.example', 'write https://sheets.example'],
    ['sheets.example:8443/shop', 'write https://sheets.example:8443/shop'],
    ['//sheets.example', 'write https://sheets.example'],
    ['ftp://sheets.example', 'is not an address of a site'],
    ['mailto:shop@sheets.example', 'is not an address of a site'],
    ['our own site', 'is not an address of a site'],
  ])('the address of a site: %s', (written, told) => {
    expect(messageOf(shopSchema.shape['site-url'], written)).toContain(told);
  });

  test.each(['https://sheets.example/', 'http://10.0.0.4:8080'])('%s is one', (written) => {
    expect(shopSchema.shape['site-url'].safeParse(written).success).toBe(true);
  });
});
