import { createHash } from 'node:crypto';
import type { Keep, KeepLater, LaterStep, Step } from '../model/keep.ts';
import { canonicalText, refuseUnkeepable } from './canonical-text.ts';
import type { Store } from './store.ts';

/** A step of whatever kind, by its name: it is not computed. */
interface Named<I, O> {
  readonly id: string;
  readonly compute?: Step<I, O>['compute'] | LaterStep<I, O>['compute'];
}

/** Results of steps, kept in a store under the digest of what they follow from. */
export interface Keeper {
  readonly keep: Keep;
  readonly keepLater: KeepLater;
  /** The result of a step where it is kept, in a box; null where it would have to be computed. */
  known<I, O>(step: Named<I, O>, input: I): { readonly value: O } | null;
  /** Keeps a result that was computed elsewhere. */
  put<I, O>(step: Named<I, O>, input: I, value: O): void;
}

/** Keeps results in a store. `code`: the digest of the code that computes them. */
export function keeperOf(store: Store, code: string): Keeper {
  const keyOf = (step: string, input: unknown): string =>
    createHash('sha256').update(`${code}\n${step}\n`).update(canonicalText(input)).digest('hex');
  const keep: Keep = <I, O>(step: Step<I, O>, input: I): O => {
    const key = keyOf(step.id, input);
    const known = store.read<O>(step.id, key);
    if (known) return known.value;
    return put(step.id, key, step.compute(input, keep));
  };
  const put = <O>(step: string, key: string, value: O): O => {
    refuseUnkeepable(value);
    store.write(step, key, value);
    return value;
  };
  const keepLater: KeepLater = async <I, O>(step: LaterStep<I, O>, input: I): Promise<O> => {
    const key = keyOf(step.id, input);
    const known = store.read<O>(step.id, key);
    return known ? known.value : put(step.id, key, await step.compute(input));
  };
  return {
    keep,
    keepLater,
    known: (step, input) => store.read(step.id, keyOf(step.id, input)),
    put: (step, input, value) => void put(step.id, keyOf(step.id, input), value),
  };
}
