import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { builders } from '../../../lib/model/audience.ts';
import { count, id, quantity, quantityWithin } from '../../../lib/model/fields.ts';
import { fieldExample, mayBeLeftOut, schemaDefault } from '../../../lib/model/writing/field-example.ts';
import { fieldText, section } from '../../../lib/model/writing/field-text.ts';
import { quantityFacts } from '../../../lib/model/writing/quantity-facts.ts';

describe('what is said of a field', () => {
  const depth = quantity('length', true);
  test('belongs to the field, not to the schema that it was made from', () => {
    const field = builders(depth, 'How deep it is.', { example: '90 mm' });
    expect(fieldText(field)).toEqual({ says: 'How deep it is.', example: '90 mm' });
    expect(fieldText(depth)).toBeNull();
    expect(fieldText(builders(depth))).toBeNull();
  });
  test('stays with a field that holds others', () => {
    const ways = section(z.record(id, count), 'Counts by name.', { name: 'rail' });
    expect(fieldText(ways)?.says).toBe('Counts by name.');
    expect(fieldExample(ways)).toEqual({ rail: 2 });
  });
});

describe('an example', () => {
  test('is that of the schema where the field has none of its own', () => {
    expect(fieldExample(builders(quantity('mass').optional(), 'Weight.'))).toBe('3.2 kg');
    expect(fieldExample(z.enum(['knob', 'switch']))).toBe('knob');
  });
  test('of an object has what can not be left out', () => {
    const size = z.strictObject({
      width: builders(quantity('length'), 'Width.', { example: '10 in' }),
      lip: builders(quantity('length').optional(), 'Lip.'),
      holes: builders(count.default(0), 'Holes.'),
    });
    expect(fieldExample(z.array(size))).toEqual([{ width: '10 in' }]);
    expect([...Object.values(size.shape)].map(mayBeLeftOut)).toEqual([false, true, true]);
    expect(schemaDefault(size.shape.holes)).toBe(0);
    expect(schemaDefault(size.shape.lip)).toBeUndefined();
  });
});

test('bounds and dimension of a quantity reach the field', () => {
  const field = builders(quantityWithin('ratio', { above: 0, most: 1 }), 'A share.');
  expect(quantityFacts(field)).toEqual({ dimension: 'ratio', above: 0, least: undefined, most: 1 });
  expect(quantityFacts(builders(count, 'Pieces.'))).toBeNull();
});
