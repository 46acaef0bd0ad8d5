import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalText } from '../../lib/kept/canonical-text.ts';
import { projected, recordedReads } from '../../lib/kept/recorded-reads.ts';

const names = ['a', 'b', 'c'] as const;
type Tree = null | number | string | readonly Tree[] | { readonly [name: string]: Tree | undefined };

const { tree: anyTree } = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom<Tree>(null, 0, 1, 'x'),
    fc.array(tie('tree'), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom(...names), tie('tree'), { maxKeys: 3 }),
  ),
}));
const anyRecord = fc.dictionary(fc.constantFrom(...names), anyTree, { maxKeys: 3 });

const hows = ['field', 'elements', 'last', 'length', 'has', 'own', 'names', 'spread', 'kind'] as const;
const anyProgram = fc.array(fc.record({ how: fc.constantFrom(...hows), name: fc.constantFrom(...names) }), {
  maxLength: 5,
});
type Program = ReturnType<typeof anyProgram.generate>['value'];

/** Reads its way down a tree, and says what it saw. */
function run([next, ...rest]: Program, at: unknown): unknown {
  if (!next) return at === null ? 'null' : typeof at === 'object' ? 'some' : at;
  if (typeof at !== 'object' || at === null) return ['end', at];
  const { how, name } = next;
  if (how === 'kind') return [Array.isArray(at), run(rest, at)];
  if (Array.isArray(at)) {
    if (how === 'length') return at.length;
    return how === 'last' ? run(rest, at.at(-1)) : at.map((one) => run(rest, one));
  }
  if (how === 'has') return [name in at, run(rest, at)];
  if (how === 'own') return [Object.hasOwn(at, name), run(rest, at)];
  if (how === 'names') return [Object.keys(at), run(rest, at)];
  if (how === 'spread') return Object.entries({ ...at }).map(([key, one]) => [key, run(rest, one)]);
  return run(rest, Reflect.get(at, name));
}

describe('what is recorded of reading', () => {
  test('tells apart whatever the same reading would: where it finds no difference, there is none in the answer', () => {
    fc.assert(
      fc.property(anyRecord, anyRecord, anyProgram, (value, other, program) => {
        const { value: watched, reads } = recordedReads(value);
        const answer = run(program, watched);
        expect(answer).toEqual(run(program, value));
        const same = canonicalText(projected(value, reads())) === canonicalText(projected(other, reads()));
        if (same) expect(run(program, other)).toEqual(answer);
      }),
      { numRuns: 2000 },
    );
  });

  test('leaves out what was not read', () => {
    const plan = {
      job: { id: 'van', title: 'Van' },
      wires: [{ id: 'a', lengthM: 1, size: { label: '4 AWG' } }],
    };
    const { value, reads } = recordedReads(plan);
    expect(value.wires.find(({ id }) => id === 'a')?.size.label).toBe('4 AWG');
    expect(reads()).toEqual([
      '.wires',
      '.wires\n[]',
      '.wires\n[]\n.id',
      '.wires\n[]\n.size',
      '.wires\n[]\n.size\n.label',
    ]);
    expect(projected(plan, reads())).toEqual({ '.wires': [{ '.id': 'a', '.size': { '.label': '4 AWG' } }] });
  });

  test('parts can be compared and looked up, and frozen ones read', () => {
    const part = Object.freeze({ id: 'a' });
    const { value } = recordedReads({ parts: Object.freeze([part, Object.freeze({ id: 'b' })]) });
    const [first, second] = value.parts;
    expect(value.parts[0]).toBe(first);
    expect(first).not.toBe(second);
    expect(value.parts.indexOf(second ?? part)).toBe(1);
    expect(new Map(value.parts.map((one) => [one, one.id])).get(first ?? part)).toBe('a');
  });
});
