import fc from 'fast-check';
import { expect, it } from 'vitest';
import { canonicalText } from '../../lib/kept/canonical-text.ts';
import { Private } from '../../lib/model/private.ts';

it('tells apart what a computation can tell apart', () => {
  const values: unknown[] = [
    0,
    -0,
    '0',
    Number.NaN,
    'NaN',
    Number.POSITIVE_INFINITY,
    null,
    undefined,
    'null',
    '',
    true,
    'true',
    [],
    {},
    Object.create(null),
    new Map(),
    new Set(),
    [[]],
    [undefined],
    [1, 2],
    [12],
    ['1,2'],
    { a: undefined },
    { a: 1, b: 2 },
    { b: 2, a: 1 },
    new Map([['a', 1]]),
    new Map([[1, 'a']]),
    new Set(['a', 1]),
    0.1 + 0.2,
    0.3,
  ];
  const texts = values.map(canonicalText);
  expect(new Set(texts).size).toBe(values.length);
});

it('is equal for equal values, and for no others', () => {
  const any = fc.anything({ withMap: true, withSet: true, maxDepth: 2, maxKeys: 2 });
  fc.assert(
    fc.property(any, any, (a, b) => {
      expect(canonicalText(structuredClone(a))).toBe(canonicalText(a));
      if (canonicalText(a) === canonicalText(b)) expect(a).toStrictEqual(b);
    }),
    { numRuns: 500 },
  );
});

it('refuses what a step could read more from than stands in it', () => {
  expect(() => canonicalText({ a: [() => 1] })).toThrow('function');
  expect(() => canonicalText(new Private('a name'))).toThrow('Private');
  expect(() => canonicalText(new Date(0))).toThrow('Date');
  expect(() => canonicalText(1n)).toThrow('bigint');
});
