import { expect, test } from 'vitest';
import { fixedBoards } from '../../lib/commands/bench/fixed/fixed-boards.ts';
import { root } from '../plan/demo.ts';
import { fixedContent, fixedJobs } from './fixed-jobs.ts';

test('the fixed jobs, their parts, vehicles and shop are read without a problem', () => {
  const { jobs, problems, parts, vehicles, shop } = fixedContent();
  expect(problems).toEqual([]);
  expect(jobs.map(({ id }) => id).toSorted()).toEqual([...fixedJobs]);
  expect(shop).not.toBeNull();
  expect(Object.keys(parts).length).toBeGreaterThan(100);
  expect(Object.keys(vehicles)).toHaveLength(3);
});

// Bends at most, as they are asked of these boards; crossings as they were reached when they were last counted.
test('the fixed boards are wired with few bends and crossings', async () => {
  const most: Readonly<Record<string, { readonly bends: number; readonly crossings: number }>> = {
    'van-three-amps': { bends: 90, crossings: 90 },
    'estate-side-well': { bends: 42, crossings: 24 },
    'under-seat-five': { bends: 6, crossings: 5 },
  };
  const boards = await fixedBoards(root);
  expect(boards).toHaveLength(3);
  for (const { job, routing } of boards) {
    const bends = routing.routes.reduce((sum, route) => sum + route.bends, 0);
    expect(bends, job).toBeLessThanOrEqual(most[job]?.bends ?? 0);
    expect(routing.crossings.length, job).toBeLessThanOrEqual(most[job]?.crossings ?? 0);
  }
});
