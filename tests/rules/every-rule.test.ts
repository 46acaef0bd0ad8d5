import { describe, expect, test } from 'vitest';
import { findingEntry } from '../../lib/model/findings/index.ts';
import { rules } from '../../lib/rules/index.ts';
import { findingOf, type Rule } from '../../lib/rules/rule.ts';
import { adviceCases } from './advice/advice-cases.ts';
import { cases, casesOf } from './cases/index.ts';
import type { FiringCase, QuietCase } from './rule-case.ts';

function findingsOf(rule: Rule, { about }: QuietCase) {
  const made = about();
  return rule.judge(made).map((verdict) => ({
    verdict,
    finding: findingOf({ ...verdict, rule: rule.id }, verdict, made.job),
  }));
}

function expectFiring(rule: Rule, one: FiringCase): void {
  const found = findingsOf(rule, one);
  const own = found.filter(
    ({ finding }) => finding.level === one.level && finding.related[0] === one.subject,
  );
  expect(
    own.length,
    `${found.map(({ finding }) => `${finding.level} ${finding.related[0]}`)}`,
  ).toBeGreaterThan(0);
  for (const { finding } of own) {
    if (one.path !== undefined) expect(finding.where.path).toBe(one.path);
    expect(finding.where.file).toBe(one.file ?? 'job.yaml');
    expect(findingEntry(rule.id).levels).toContain(finding.level);
    expect(finding.message).not.toMatch(/NaN|undefined|Infinity|unknown number/);
    expect(finding.remedy).toMatch(/\S/);
    expect(finding.source).toMatch(/\S/);
    // What is told to be written is written and checked again in advice.test.ts.
    if (finding.advice) expect(adviceCases.map(({ rule: advised }) => advised)).toContain(rule.id);
  }
  if (one.toDo)
    expect(
      own.some(({ finding }) => one.toDo?.test(finding.remedy)),
      own[0]?.finding.remedy,
    ).toBe(true);
  if (one.says)
    expect(
      own.some(({ finding }) => one.says?.test(finding.message)),
      own[0]?.finding.message,
    ).toBe(true);
}

test('no two rules share an id', () => {
  expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
});

test('every rule has a case in which it fires and one in which it keeps quiet, and no case is without its rule', () => {
  expect(Object.keys(cases).toSorted()).toEqual(rules.map(({ id }) => id).toSorted());
  for (const [id, { fires, quiet }] of Object.entries(cases)) {
    expect(fires.length, id).toBeGreaterThan(0);
    expect(quiet.length, id).toBeGreaterThan(0);
  }
});

describe.each(rules)('$id', (rule) => {
  test.each(casesOf(rule.id)?.fires ?? [])('fires: $name', (one) => expectFiring(rule, one));
  test.each(casesOf(rule.id)?.quiet ?? [])('keeps quiet: $name', (one) => {
    expect(findingsOf(rule, one).map(({ finding }) => finding.message)).toEqual([]);
  });
  test('fires at every level that it may have', () => {
    const levels = new Set((casesOf(rule.id)?.fires ?? []).map(({ level }) => level));
    expect([...levels].toSorted()).toEqual([...findingEntry(rule.id).levels].toSorted());
  });
});
