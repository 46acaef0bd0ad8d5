import type { Source } from '../findings/source.ts';
import type { Trace } from '../trace.ts';
import type { OutsideCheckId } from './outside-checks.ts';

/** What is told of a quantity that the project computes: how, by whose formula, and what outside the project holds it. */
export interface Computation {
  /** What it is, as a sheet calls it. */
  readonly computes: string;
  /** Its formulas in plain writing, one for each case; `…` stands for names or figures of the job. */
  readonly formulas: readonly [string, ...string[]];
  readonly sources: readonly [Source, ...Source[]];
  /** The checks outside the project that hold it. */
  readonly held: readonly [OutsideCheckId, ...OutsideCheckId[]];
  /** Fields of the plan that have no trace of their own, since their table says how all of them came about. */
  readonly fields?: readonly string[];
}

/** True where a formula, as a trace tells it, is one of a computation's. */
export function isFormulaOf({ formulas }: Pick<Computation, 'formulas'>, formula: string): boolean {
  return formulas.some((pattern) => fits(pattern, formula));
}

/** True where a trace's source, with its mark, is one of a computation's. */
export function isSourceOf(
  { sources }: Pick<Computation, 'sources'>,
  { citation, mark }: CitedTrace,
): boolean {
  return sources.some((one) => one.mark === mark && fits(one.source, citation));
}

/** True where a field of the plan, such as `steps[].minutes`, is one that a computation fills. */
export function isFieldOf({ fields = [] }: Pick<Computation, 'fields'>, field: string): boolean {
  return fields.some((pattern) => fits(pattern, field));
}

type CitedTrace = Pick<Trace, 'citation' | 'mark'>;

/** True where a text is a pattern, `…` any part of it. */
function fits(pattern: string, text: string): boolean {
  const parts = pattern.split('…').map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${parts.join('.*')}$`, 's').test(text);
}
