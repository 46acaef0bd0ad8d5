import { describe, expect, test } from 'vitest';
import { findingCatalogue, findingEntry, isFindingId } from '../../lib/model/findings/index.ts';
import { boardLengths, inWords } from '../../lib/plan/board/remark-words.ts';
import { rules } from '../../lib/rules/index.ts';
import { findingOf } from '../../lib/rules/rule.ts';
import { about } from './case.ts';
import { cases } from './cases/index.ts';
import type { FiringRemark, QuietRemark } from './remark-case.ts';
import { remarkCases } from './remarks/index.ts';

/** Every finding of the catalogue has its cases; one without them does not compile. */
const everyFinding: Readonly<Record<keyof typeof findingCatalogue, unknown>> = { ...cases, ...remarkCases };

test('each finding is given by a rule or a computation, and no case is of another', () => {
  expect(Object.keys(everyFinding).toSorted()).toEqual(Object.keys(findingCatalogue).toSorted());
  const byRules = new Set<string>(rules.map(({ id }) => id));
  const byComputations = Object.keys(findingCatalogue).filter((id) => !byRules.has(id));
  expect(Object.keys(remarkCases)).toEqual(expect.arrayContaining(byComputations));
});

const { job } = about();

function expectFiring(id: string, { level, subject, says, remarks }: FiringRemark): void {
  const told = remarks();
  const found = told.find(
    ({ rule, of, ...one }) => rule === id && one.level === level && (of[0] ?? '') === subject,
  );
  expect(found, told.map((one) => `${one.level} ${one.rule} ${one.of[0]}`).join(', ')).toBeDefined();
  if (!found) return;
  const finding = findingOf(inWords(found, boardLengths(job, 'main', { path: '' })), { path: '' }, job);
  expect(findingEntry(found.rule).levels).toContain(finding.level);
  expect(finding.message).toMatch(says ?? /\S/);
  expect(finding.message).not.toMatch(/NaN|undefined|Infinity/);
  expect(finding.remedy).toMatch(/\S/);
  expect(finding.source).toMatch(/\S/);
}

const each = Object.entries(remarkCases).map(([id, { fires, quiet }]) => ({ id, fires, quiet }));

describe.each(each)('$id', ({ id, fires, quiet }) => {
  test.each([...fires])('is remarked: $name', (one: FiringRemark) => expectFiring(id, one));
  test.each([...quiet])('is not: $name', (one: QuietRemark) => {
    const own = one.remarks().filter(({ rule }) => rule === id);
    expect(own.map(({ message }) => message)).toEqual([]);
  });
  test('has a case of either kind, and is remarked at every level that no rule tells it at', () => {
    expect(fires.length).toBeGreaterThan(0);
    expect(quiet.length).toBeGreaterThan(0);
    const levels = new Set<string>(fires.map(({ level }) => level));
    const lawful: readonly string[] = isFindingId(id) ? findingEntry(id).levels : [];
    expect([...levels].filter((level) => !lawful.includes(level))).toEqual([]);
    if (!rules.some((rule) => rule.id === id)) expect([...levels].toSorted()).toEqual([...lawful].toSorted());
  });
});
