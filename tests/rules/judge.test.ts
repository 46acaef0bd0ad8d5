import { expect, test } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { about } from './case.ts';

test('a job with nothing wrong has no finding', () => {
  const { job, plan } = about();
  expect(judge(job, plan, [])).toEqual([]);
});
