import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { joinedValues } from '../../../lib/commands/line/joined-values.ts';

const takesValue = (flag: string): boolean => flag === 'terminal';

test('a value that begins with a hyphen belongs to the flag before it', () => {
  expect(joinedValues(['new', '--terminal', '-, supply-negative', '--yes'], takesValue)).toEqual([
    'new',
    '--terminal=-, supply-negative',
    '--yes',
  ]);
});

test('a flag without a value keeps what follows it, and two hyphens are never a value', () => {
  const words = ['--yes', '-5 dB', '--terminal', '--other'];
  expect(joinedValues(words, takesValue)).toEqual(words);
});

test('whatever is written behind a flag with one hyphen or none, the parser of Node reads it as its value', () => {
  const options = { terminal: { type: 'string', multiple: true } } as const;
  const value = fc.string({ minLength: 1 }).filter((text) => !text.startsWith('--'));
  fc.assert(
    fc.property(fc.array(value, { minLength: 1 }), (values) => {
      const words = values.flatMap((one) => ['--terminal', one]);
      expect(parseArgs({ args: joinedValues(words, takesValue), options }).values.terminal).toEqual(values);
    }),
  );
});
