import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { greatestDifferences } from '../../../lib/model/computations/greatest-differences.ts';
import {
  computation,
  computationCatalogue,
  isComputationId,
  isFormulaOf,
  isSourceOf,
} from '../../../lib/model/computations/index.ts';
import { outsideChecks } from '../../../lib/model/computations/outside-checks.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import type { Trace } from '../../../lib/model/trace.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { demoJobs, demoPlan } from '../../plan/demo.ts';
import { smallPlan } from '../../plan/plan-small-shop.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));

function sourcesBelow(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'));
}

/** What of a trace the catalogue does not tell. */
function untold(trace: Trace): string[] {
  const { rule, formula, citation, mark } = trace;
  if (!isComputationId(rule)) return [`${rule} is not in the catalogue`];
  return [
    ...(isFormulaOf(computation(rule), formula ?? '') ? [] : [`${rule}: the formula ${formula}`]),
    ...(isSourceOf(computation(rule), trace) ? [] : [`${rule}: the source ${citation}, ${mark}`]),
  ];
}

const plans: readonly (readonly [string, () => BuildPlan])[] = [
  ...demoJobs.map((id) => [id, () => demoPlan(id)] as const),
  ...fixedJobs.map((id) => [`${id} as it was`, () => fixedPlan(id)] as const),
  ['the small shop', () => smallPlan().plan],
  ['the sample', () => samplePlan()],
];

describe('the catalogue of computations', () => {
  it.each(plans)('tells the formula and the source of every computed number of %s', (_, plan) => {
    const computed = Object.values(plan().traces).filter(({ origin }) => origin === 'computed');
    expect(computed.length).toBeGreaterThan(0);
    expect([...new Set(computed.flatMap(untold))]).toEqual([]);
  });

  it('tells nothing that no code computes', () => {
    const code = sourcesBelow('lib').filter(
      (source) => !source.includes('satisfies Readonly<Record<string, Computation>>'),
    );
    const traced = Object.keys(computationCatalogue).filter(
      (id) => isComputationId(id) && computation(id).fields === undefined,
    );
    const unused = traced.filter(
      (id) => !code.some((source) => source.includes(`'${id}'`) || source.includes(`\`${id}\``)),
    );
    expect(unused).toEqual([]);
  });

  it('finds a formula that it does not tell', () => {
    expect(isFormulaOf({ formulas: ['I = d * P'] }, 'I = d * P')).toBe(true);
    expect(isFormulaOf({ formulas: ['R = …; parallel'] }, 'R = a.C1; parallel')).toBe(true);
    expect(isFormulaOf({ formulas: ['I = d * P'] }, 'I = d / P')).toBe(false);
    expect(
      untold({
        origin: 'computed',
        value: 1,
        unit: 'A',
        rule: 'drop-share',
        formula: 'Uf',
        citation: 'x',
        inputs: [],
      }),
    ).toHaveLength(2);
  });
});

describe('a check outside the project', () => {
  const tests = sourcesBelow('tests');
  const held = new Set(
    Object.keys(computationCatalogue).flatMap((id) => (isComputationId(id) ? computation(id).held : [])),
  );

  it.each(Object.keys(outsideChecks))(
    '%s is made by a test, holds a computation, and its greatest difference is kept',
    (id) => {
      expect(tests.some((source) => source.includes(`outsideCheck('${id}')`))).toBe(true);
      expect([...held]).toContain(id);
      expect(new Map(Object.entries(greatestDifferences)).get(id)).toSatisfy(Number.isFinite);
    },
  );
});
