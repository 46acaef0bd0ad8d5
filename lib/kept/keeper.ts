import { createHash } from 'node:crypto';
import type { Keep, Step } from '../model/keep.ts';
import { canonicalText, refuseUnkeepable } from './canonical-text.ts';
import type { Store } from './store.ts';

/** Results of steps, kept in a store under the digest of what they follow from. */
export interface Keeper {
  readonly keep: Keep;
  /** The result of a step where it is kept, in a box; null where it would have to be computed. */
  known<I, O>(step: Step<I, O>, input: I): { readonly value: O } | null;
}

/** Keeps results in a store. `code`: the digest of the code that computes them. */
export function keeperOf(store: Store, code: string): Keeper {
  const keyOf = (step: string, input: unknown): string =>
    createHash('sha256').update(`${code}\n${step}\n`).update(canonicalText(input)).digest('hex');
  const keep: Keep = <I, O>(step: Step<I, O>, input: I): O => {
    const key = keyOf(step.id, input);
    const known = store.read<O>(step.id, key);
    if (known) return known.value;
    const value = step.compute(input, keep);
    refuseUnkeepable(value);
    store.write(step.id, key, value);
    return value;
  };
  return { keep, known: (step, input) => store.read(step.id, keyOf(step.id, input)) };
}
