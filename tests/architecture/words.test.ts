import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { libModules, root } from './modules.ts';
import { type WordSet, wordSets } from './words.ts';

/** Sets that stand more than once: those of a schema anywhere, those of three words or more in types. */
function repeated(sets: readonly WordSet[]): string[] {
  const ofSchemas = new Set(sets.filter(({ form }) => form === 'schema').map(({ words }) => words));
  const counted = sets.filter(({ words, count }) => count >= 3 || ofSchemas.has(words));
  const places = new Map<string, string[]>();
  for (const { words, at } of counted) places.set(words, [...(places.get(words) ?? []), at]);
  return [...places].flatMap(([words, each]) => (each.length > 1 ? [`${words}: ${each.join(', ')}`] : []));
}

describe('closed sets of words', () => {
  test('stand once in lib', () => {
    const sets = libModules().flatMap(({ path }) => wordSets(path, readFileSync(join(root, path), 'utf8')));
    expect(sets.length).toBeGreaterThan(100);
    expect(repeated(sets)).toEqual([]);
  });

  test('that are repeated are seen, in any order', () => {
    const source =
      "const a = z.enum(['x', 'y']);\ntype B = 'y' | 'x';\ntype C = 'p' | 'q';\ntype D = 'q' | 'p';";
    expect(repeated(wordSets('a.ts', source))).toEqual(['x | y: a.ts:1, a.ts:2']);
    expect(repeated(wordSets('a.ts', "type A = 'x' | 'y' | 'z';\nlet b: 'z' | 'y' | 'x';"))).toHaveLength(1);
  });
});
