import { interruptByCranking } from '../model/tables/fuse-forms.ts';
import type { Traced } from '../model/trace.ts';
import { type PowerFault, positiveFault, traced } from './traced.ts';

/**
 * The fault current (A) that a main fuse at a battery must be able to interrupt, by the battery's cold-cranking
 * amperes: ABYC E-11, from memory.
 */
export function interruptNeedA(crankingA: number): Traced<number> | PowerFault {
  const bad = positiveFault({ 'cold-cranking current': crankingA });
  if (bad) return bad;
  const step = interruptByCranking.find(({ upToA }) => crankingA <= upToA);
  return traced(step?.needA ?? 5000, 'A', {
    rule: 'fuse-interrupting',
    formula: '1,500 A to 650 A of cranking; 3,000 A to 1,100 A; 5,000 A above',
    citation: 'ABYC E-11',
    mark: 'mem',
    inputs: [['cranking', crankingA, 'A']],
  });
}

/**
 * The fault current (A) where a fuse stands further along the line: E / (Rsource + Rline), Ohm's law with the far
 * side shorted. Fault where there is no resistance at all to limit it.
 */
export function prospectiveFaultA(
  emfV: number,
  sourceOhm: number,
  lineOhm: number,
): Traced<number> | PowerFault {
  const ohm = Math.max(0, sourceOhm) + Math.max(0, lineOhm);
  const bad = positiveFault({ 'electromotive force': emfV, 'resistance up to the fuse': ohm });
  if (bad) return bad;
  return traced(emfV / ohm, 'A', {
    rule: 'fuse-interrupting',
    formula: 'I = E / (Rs + Rl)',
    citation: "Ohm's law",
    inputs: [
      ['E', emfV, 'V'],
      ['Rs', sourceOhm, 'ohm'],
      ['Rl', lineOhm, 'ohm'],
    ],
  });
}
