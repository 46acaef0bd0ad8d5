import { describe, expect, test } from 'vitest';
import { readContent } from '../../lib/read/read-content.ts';
import { planKept } from '../plan/plan-kept.ts';
import { type Change, smallShop } from './small-shop.ts';

/** The battery and the alternator of the small shop, without what it says of their size and mass. */
const unmeasured: readonly Change[] = ['Battery', 'Alternator'].map((title) => [
  'content/parts/all.yaml',
  `title: ${title}\n    size: { width: 100 mm, depth: 80 mm, height: 40 mm }\n    mass: 1 kg\n`,
  `title: ${title}\n`,
]);
const builtIn: Change = [
  'content/jobs/demo.yaml',
  'cables:\n',
  '  second: { part: battery-a, in: boot }\ncables:\n',
];

describe('a battery or an alternator of which size and mass are not told', () => {
  test('is read where the vehicle has it, and the job is planned as with them', () => {
    const { jobs, problems } = readContent(smallShop(...unmeasured));
    const [job] = jobs;
    const [measured] = readContent(smallShop()).jobs;
    expect(problems).toEqual([]);
    if (!job || !measured) throw new Error('The small shop has no job that can be read.');
    const { plan } = planKept(job);
    expect(plan.power.points).toEqual(planKept(measured).plan.power.points);
    expect(plan.power.points[0]?.state).toBe('solved');
  });

  test('is told where a job builds it in, with what to write', () => {
    expect(readContent(smallShop(builtIn)).problems).toEqual([]);
    const { problems } = readContent(smallShop(...unmeasured, builtIn));
    expect(problems.map(({ message, remedy, where }) => [where.file, message, remedy])).toEqual([
      [
        'content/jobs/demo.yaml',
        '"battery-a" has no size: and mass: in its part, and second is built in',
        'write both in the part battery-a: size: { width: , depth: , height: } and mass:',
      ],
    ]);
  });
});
