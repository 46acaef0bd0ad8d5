import { expect, test } from 'vitest';
import { fixedContent, fixedJobs } from './fixed-jobs.ts';

test('the fixed jobs, their parts, vehicles and shop are read without a problem', () => {
  const { jobs, problems, parts, vehicles, shop } = fixedContent();
  expect(problems).toEqual([]);
  expect(jobs.map(({ id }) => id).toSorted()).toEqual([...fixedJobs]);
  expect(shop).not.toBeNull();
  expect(Object.keys(parts).length).toBeGreaterThan(100);
  expect(Object.keys(vehicles)).toHaveLength(3);
});
