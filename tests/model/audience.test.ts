import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import {
  audiencesOf,
  builders,
  customerAndShop,
  everyone,
  shopOnly,
  shownTo,
} from '../../lib/model/audience.ts';
import { quantity, text } from '../../lib/model/fields.ts';

describe('audiences', () => {
  test('a leaf that was never declared is shown to nobody', () => {
    expect(audiencesOf(z.string())).toEqual([]);
    expect(audiencesOf(text('A'))).toEqual([]);
  });

  test.each([
    [everyone, ['bench', 'customer', 'shop']],
    [builders, ['bench', 'shop']],
    [shopOnly, ['shop']],
    [customerAndShop, ['customer', 'shop']],
    [shownTo('bench'), ['bench']],
    [shownTo(), []],
  ])('each helper declares its set', (declare, expected) => {
    expect(audiencesOf(declare(z.string()))).toEqual(expected);
  });

  test('the schema that was handed in is left as it was', () => {
    const shared = text('A');
    const [open, closed] = [everyone(shared), shopOnly(shared)];
    expect(audiencesOf(shared)).toEqual([]);
    expect(audiencesOf(open)).toEqual(['bench', 'customer', 'shop']);
    expect(audiencesOf(closed)).toEqual(['shop']);
  });

  test('the last declaration counts, narrower or wider', () => {
    expect(audiencesOf(shopOnly(everyone(z.string())))).toEqual(['shop']);
    expect(audiencesOf(everyone(shopOnly(z.string())))).toEqual(['bench', 'customer', 'shop']);
  });

  test('what is made of a declared leaf by optional and the like belongs to nobody until declared', () => {
    const leaf = everyone(z.string());
    for (const made of [
      leaf.optional(),
      leaf.nullable(),
      leaf.default('x'),
      z.array(leaf),
      leaf.or(z.number()),
    ])
      expect(audiencesOf(made)).toEqual([]);
    expect(audiencesOf(builders(leaf.optional()))).toEqual(['bench', 'shop']);
  });

  test('a declared leaf reads and is described as before', () => {
    const length = builders(quantity('length'));
    expect(length.decode('1 in')).toBe(0.0254);
    expect(length.safeParse(5).success).toBe(false);
    expect(builders(text('Front')).meta()?.examples).toEqual(['Front']);
    expect(z.toJSONSchema(builders(text('Front')))).toMatchObject({ type: 'string', examples: ['Front'] });
  });
});
