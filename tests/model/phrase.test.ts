import { expect, test } from 'vitest';
import { length, phrase, worded } from '../../lib/model/phrase.ts';

const write = (kind: string, lengthM: number) => `<${kind} ${lengthM}>`;

test('a phrase keeps its texts, counts and lengths in their order until they are written', () => {
  const inner = phrase`${length('size', 0.2)} wide`;
  const told = phrase`${'amp'}, ${inner}, stands ${length('overlap', 0.1)} off in ${3} places`;
  expect(worded(told, write)).toBe('amp, <size 0.2> wide, stands <overlap 0.1> off in 3 places');
});

test('a text without a length is a phrase as it is', () => {
  expect(worded('move it', write)).toBe('move it');
  expect(worded(phrase`move ${'it'}`, write)).toBe('move it');
});

test('a phrase is plain data', () => {
  const told = phrase`${'amp'} is ${length('size', 0.2)} wide`;
  expect(worded(JSON.parse(JSON.stringify(told)), write)).toBe(worded(told, write));
});
