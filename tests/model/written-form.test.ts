import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { playedBandField } from '../../lib/model/content/played-band.ts';
import { id, measured, quantity, wireSize } from '../../lib/model/fields.ts';
import { fileNameFault, refusedFileNames } from '../../lib/model/file-name.ts';
import { dimensionNames, dimensions } from '../../lib/model/quantity/dimensions.ts';
import { readingForm, wireSizeForm, writtenForm } from '../../lib/model/quantity/written-form.ts';
import { rowForm, rowNames } from '../../lib/model/short-forms/row-names.ts';

/** As the programs that validate take a pattern: with the flag for whole characters (JSON Schema 2020-12, 6.4). */
const fits = (pattern: string, text: string): boolean => new RegExp(pattern, 'u').test(text);

/** Texts that are quantities, or nearly: pieces of them in any order, with blanks of each kind. */
const pieces = fc
  .array(
    fc.oneof(
      {
        weight: 3,
        arbitrary: fc.constantFrom('0', '1', '13', '5/8', '0/4', '9/3', '1/0', '.5', '2.50', '00'),
      },
      { weight: 2, arbitrary: fc.constantFrom(' ', '  ', '\u00a0', '\t', '-', '+', '/', '.', ',', '') },
      {
        weight: 3,
        arbitrary: fc.constantFrom(...dimensionNames.flatMap((name) => Object.keys(dimensions[name].units))),
      },
    ),
    { minLength: 1, maxLength: 7 },
  )
  .map((all) => all.join(''));

/** Of the right form, and of an amount that no pattern can tell from another. */
const amounts =
  /is not a proper fraction|that no tape has|12 inches or more|is too large a number|beyond anything in a vehicle|is below zero/;

describe('the pattern of a dimension', () => {
  const signs = [false, true] as const;

  test.each(dimensionNames)(
    '%s: what the reader takes fits it, and what fits is refused for its amount alone',
    (name) => {
      fc.assert(
        fc.property(pieces, fc.constantFrom(...signs), (text, unsigned) => {
          const read = quantity(name, unsigned).safeParse(text);
          const isOfForm = fits(writtenForm(name, unsigned ? 'unsigned' : 'signed'), text);
          if (read.success) expect(isOfForm).toBe(true);
          else if (isOfForm) expect(read.error.issues[0]?.message).toMatch(amounts);
        }),
        { numRuns: 2000 },
      );
    },
  );

  test.each([
    ['13 5/8 in', true],
    ['13-5/8"', true],
    [`5'-3 5/8"`, true],
    ['5 ft 3 in', true],
    ['-2 mm', true],
    ['13 5 / 8 in', false],
    ['13,5 mm', false],
    ['13', false],
    ['13 inches', false],
    ['13 A', false],
  ])('of a length: %s is %s', (text, isOfForm) => {
    expect(fits(writtenForm('length'), text)).toBe(isOfForm);
  });

  test('leaves out what lies below zero where that is no amount; nought may have its sign', () => {
    const texts = ['-2 mm', '- 1/64 in', '-0 mm', '+2 mm', '-0 ft 0 in'];
    expect(texts.map((text) => fits(writtenForm('length', 'unsigned'), text))).toEqual([
      false,
      false,
      true,
      true,
      true,
    ]);
  });

  test('every example of a dimension fits it', () => {
    for (const name of dimensionNames)
      for (const example of dimensions[name].examples)
        expect(fits(writtenForm(name), example), example).toBe(true);
  });
});

describe('the patterns of what is no plain quantity', () => {
  const patternOf = (schema: z.ZodType): string => String(z.toJSONSchema(schema, { io: 'input' }).pattern);

  test.each(['4 AWG', '1/0 AWG', '1/0AWG', '16 mm2', '2.5 mm²', '4AWG '])(
    '%s is a conductor size',
    (text) => {
      expect(wireSize.safeParse(text).success).toBe(true);
      expect(fits(wireSizeForm(), text)).toBe(true);
    },
  );
  test.each(['3/0', '5/0 AWG', '4 ga', '23 AWG', '2,5 mm2'])('%s is none', (text) => {
    expect(wireSize.safeParse(text).success).toBe(false);
    expect(fits(wireSizeForm(), text)).toBe(false);
  });

  test('what is read as a reading of a meter fits its pattern, and what fits is one but for its amount', () => {
    fc.assert(
      fc.property(pieces, fc.constantFrom('', '-', ' - '), (text, minus) => {
        const written = `${minus}${text}`;
        if (measured.safeParse(written).success) expect(fits(readingForm(), written)).toBe(true);
      }),
    );
    expect(fits(readingForm(), '-0.02 V')).toBe(true);
    expect(fits(readingForm(), '13.9')).toBe(false);
  });

  test.each([
    ['80 Hz to 3 kHz', true],
    ['from 3 kHz', true],
    ['up to 80 Hz', true],
    ['everything', true],
    ['80 to 3000 Hz', false],
    ['bass', false],
  ])('a band that a speaker plays: %s is %s', (text, isBand) => {
    expect(playedBandField.safeParse(text).success).toBe(isBand);
    expect(fits(patternOf(playedBandField), text)).toBe(isBand);
  });
});

test('names that no file can have are those that the pattern finds', () => {
  const name = fc.oneof(
    fc.string({ maxLength: 6 }),
    fc.constantFrom(
      'con',
      'CON',
      'con.txt',
      'lpt1',
      'Com9.a',
      'console',
      'com10',
      ' a',
      'a.',
      'a b',
      'a\u0007b',
    ),
  );
  fc.assert(
    fc.property(name, (text) => {
      expect(fits(refusedFileNames, text)).toBe(fileNameFault(text) !== null);
    }),
  );
});

describe('the pattern of a row', () => {
  const names = fc
    .array(fc.constantFrom('CH', '1', '4', '12', '..', ',', ' ', '+', '-', 'a', 'B+', '0', '.'), {
      maxLength: 7,
    })
    .map((all) => all.join(''))
    .filter((text) => text.trim() !== '');

  test('takes every name and row of names that is read', () => {
    fc.assert(
      fc.property(names, (text) => {
        if (!('unreadable' in rowNames(text))) expect(fits(rowForm('any'), text)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
  test('of ids takes those whose names are ids', () => {
    fc.assert(
      fc.property(
        names.map((text) => text.toLowerCase()),
        (text) => {
          const read = rowNames(text);
          if (!('unreadable' in read) && read.every((one) => id.safeParse(one).success))
            expect(fits(rowForm('id'), text)).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
    expect(
      ['p1..4', 'left, right', 'p-1..p-4', 'door-1..2-front'].every((row) => fits(rowForm('id'), row)),
    ).toBe(true);
  });
  test.each(['CH1..', '..4', 'B+, ', ',B+', 'CH..4'])('refuses %s', (row) => {
    expect(rowNames(row)).toHaveProperty('unreadable');
    expect(fits(rowForm('any'), row)).toBe(false);
  });
});
