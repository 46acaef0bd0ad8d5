import type { OperatingPoint } from '../../../model/plan/index.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import { continuousPoints } from '../operating-points.ts';

/**
 * The greatest current through a fuse at the points that last (A), and the point where it flows: devices of constant
 * power draw more there than at the voltage for sizing where the supply is lower. Null where no point has a solution.
 */
export function continuousCurrent(
  fuse: string,
  points: readonly OperatingPoint[],
): { readonly currentA: Traced<number>; readonly at: string } | null {
  const flows = points
    .filter(({ name }) => continuousPoints.includes(name))
    .flatMap(({ name, title, elements }) => {
      const currentA = elements.find(({ of, kind }) => of === fuse && kind === 'fuse')?.currentA;
      return currentA === undefined ? [] : [{ name, title, currentA: Math.abs(currentA) }];
    });
  const [greatest] = flows.toSorted((a, b) => b.currentA - a.currentA);
  if (!greatest) return null;
  const currentA = traced(greatest.currentA, 'A', {
    rule: 'fuse-continuous',
    formula: 'the greatest of the currents at the points that last',
    citation: 'the solved network',
    inputs: flows.map(({ title, currentA }) => [title, currentA, 'A'] as const),
  });
  return { currentA, at: greatest.name };
}
