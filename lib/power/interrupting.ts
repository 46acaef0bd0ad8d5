import { type Fault, positiveFault } from '../model/fault.ts';
import { amps, ampsDrawn } from '../model/printed/told.ts';
import { type Traced, traced } from '../model/trace.ts';
import type { PowerRules } from './power-rules.ts';

/**
 * The fault current (A) that a main fuse must be able to interrupt, by the cold-cranking current (A) of all batteries
 * that it is joined to: ABYC E-11, from memory; the three figures are house rules.
 */
export function interruptNeedA(crankingA: number, rules: PowerRules): Traced<number> | Fault {
  const bad = positiveFault({ 'cold-cranking current': crankingA });
  if (bad) return bad;
  const { to650A, to1100A, aboveA } = rules.interruptNeeds;
  const [lowA, highA] = [650, 1100];
  const needA = crankingA <= lowA ? to650A : crankingA <= highA ? to1100A : aboveA;
  return traced(needA, 'A', {
    rule: 'fuse-interrupting',
    formula: `${ampsDrawn(to650A)} to ${amps(lowA)} of cranking; ${ampsDrawn(to1100A)} to ${amps(highA)}; ${ampsDrawn(aboveA)} above`,
    citation: 'ABYC E-11',
    mark: 'mem',
    inputs: [['cranking', crankingA, 'A']],
  });
}

/**
 * The fault current (A) of a dead short: E / (Rsource + Rline), Ohm's law. `line` names what the resistance of the line
 * is the sum of (ohm), `sources` what each source gives (A), both for the working. Fault where there is no resistance at
 * all to limit it.
 */
export function prospectiveFaultA(
  emfV: number,
  sourceOhm: number,
  lineOhm: number,
  line: readonly (readonly [name: string, ohm: number])[] = [],
  sources: readonly (readonly [name: string, currentA: number])[] = [],
): Traced<number> | Fault {
  const ohm = Math.max(0, sourceOhm) + Math.max(0, lineOhm);
  const bad = positiveFault({ 'electromotive force': emfV, 'resistance up to the fuse': ohm });
  if (bad) return bad;
  const sum =
    "Rl = the sum of what lies on the way, cold and without its joints; of ways side by side each resistance, a source's too, times the square of the share of the current that it takes; I = the sum of what the sources give";
  return traced(emfV / ohm, 'A', {
    rule: 'fuse-interrupting',
    formula: ['I = E / (Rs + Rl)', ...(line.length > 0 ? [sum] : [])].join('; '),
    citation: "Ohm's law; prospective current as IEC 60269 defines it, joints as in IEC 61660-1",
    mark: 'mem',
    inputs: [
      ['E', emfV, 'V'],
      ['Rs', sourceOhm, 'ohm'],
      ['Rl', lineOhm, 'ohm'],
      ...line.map(([name, lineShare]) => [name, lineShare, 'ohm'] as const),
      ...sources.map(([name, currentA]) => [`${name} gives`, currentA, 'A'] as const),
    ],
  });
}
