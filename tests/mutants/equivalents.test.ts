import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { equivalents } from './equivalents.ts';
import { areaOf, sampled, whole } from './scope.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

test.each(equivalents)('a change that changes nothing stands where it is said to: $file, $from', (one) => {
  const lines = readFileSync(`${root}/${one.file}`, 'utf8').split('\n');
  expect(lines.filter((line) => line.trim().startsWith(one.line))).toHaveLength(1);
  expect(one.why).toMatch(/\S{3}/);
  expect(areaOf(one.file)).toBeDefined();
});

test('every place whose code is changed is there', () => {
  for (const { code } of [...whole, ...sampled])
    for (const place of code) expect(existsSync(`${root}/${place}`), place).toBe(true);
});
