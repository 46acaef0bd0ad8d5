import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../lib/model/finding.ts';
import { smallShop } from '../../read/small-shop.ts';
import { adviceCases } from './advice-cases.ts';
import { findingsIn, withLines } from './advised.ts';

const stopsOf = (findings: readonly Finding[]): readonly string[] =>
  findings.flatMap(({ level, rule, related }) => (level === 'stop' ? [`${rule} ${related[0] ?? ''}`] : []));

/** What a remedy says to write is written, and the job is checked again. */
describe('what a finding says to write', () => {
  test.each(adviceCases)('is read, and mends it: $name', ({ changes, rule, subject, ways, says }) => {
    const files = smallShop(...changes);
    const before = findingsIn(files);
    const told = before.find((one) => one.rule === rule && one.related[0] === subject);
    const advice = told?.advice ?? [];
    expect(advice.length, before.map((one) => `${one.rule} ${one.related[0]}`).join(', ')).toBe(ways);
    const lines = (advice[0] ?? []).map(
      ({ path, text }) => `${path.slice(path.lastIndexOf('/') + 1)}: ${text}`,
    );
    expect(lines.join(', ')).toMatch(says);
    for (const way of advice) {
      for (const { text } of way) expect(told?.remedy).toContain(text);
      const after = findingsIn(withLines(files, way));
      expect(after.filter((one) => one.rule === rule && one.related[0] === subject)).toEqual([]);
      expect(stopsOf(before)).toEqual(expect.arrayContaining([...stopsOf(after)]));
    }
  });
});
