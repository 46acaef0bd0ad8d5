import { type Fault, negativeFault } from '../model/fault.ts';
import { commonPractice, type Traced, traced } from '../model/trace.ts';
import type { PowerRules } from './power-rules.ts';

/** Current drawn with everything switched off (A), as a sum by device, against the limit of the house rules (50 mA). */
export function keyOffDraw(
  drawsA: Readonly<Record<string, number>>,
  rules: PowerRules,
): { readonly drawA: Traced<number>; readonly limitA: number; readonly over: boolean } | Fault {
  const bad = negativeFault(drawsA);
  if (bad) return bad;
  const drawA = traced(
    Object.values(drawsA).reduce((sum, drawn) => sum + drawn, 0),
    'A',
    {
      rule: 'charging-key-off',
      citation: commonPractice,
      mark: 'cp',
      formula: Object.keys(drawsA).join(' + ') || '0',
      inputs: Object.entries(drawsA).map(([name, drawn]) => [name, drawn, 'A'] as const),
    },
  );
  return { drawA, limitA: rules.keyOffA, over: drawA.value > rules.keyOffA + 1e-12 };
}
