import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { buildWith } from '../../lib/commands/build.ts';
import { type Crew, openCrew } from '../../lib/commands/crew/crew.ts';
import type { Done, TaskName, Tasks } from '../../lib/commands/crew/tasks.ts';
import { realEffects } from '../../lib/commands/effects.ts';
import { loadShop } from '../../lib/commands/shop/load-shop.ts';
import { ShopFolder } from './shop-folder.ts';

/** What was asked of a crew: tasks by the file of their job, or by the id of the plan. */
interface Asked {
  readonly name: TaskName;
  readonly of: string;
}

/** A crew on one thread that notes its tasks, and breaks down over some. */
function noting(asked: Asked[], breaksDown: (task: Asked) => boolean = () => false): Crew {
  const crew = openCrew({ keptIn: null, threads: 0 });
  return {
    ...crew,
    task: async <T extends TaskName>(
      name: T,
      input: Tasks[T]['input'],
    ): Promise<Done<Tasks[T]['output']>> => {
      const task = { name, of: 'released' in input ? input.job.path : input.job.id };
      asked.push(task);
      return breaksDown(task) ? { state: 'failed', failure: 'A wire has no end.' } : crew.task(name, input);
    },
  };
}

describe('a shop of two jobs', () => {
  const shop = new ShopFolder();
  let told: string[] = [];
  const effects = { ...realEffects(shop.root), watched: false, tell: (text: string) => void told.push(text) };
  const build = (crew: Crew) => buildWith(crew, effects, { audience: 'bench', keepGoing: false, job: null });
  const hasPage = (id: string) => existsSync(join(shop.root, 'dist/jobs', id, 'index.html'));

  beforeAll(() => {
    shop.write(
      'content/jobs/second.yaml',
      shop.read('content/jobs/demo.yaml').replace('id: demo', 'id: second'),
    );
  });
  beforeEach(() => {
    told = [];
  });
  afterAll(() => shop.remove());

  it.each(['plan', 'draw'] as const)(
    'where one can not be made (%s), names it and builds the other',
    async (name) => {
      const breaks = (task: Asked) => task.name === name && task.of.includes('second');
      expect(await build(noting([], breaks))).toBe(3);
      expect(told.join('\n')).toContain(
        'second was left out, since it could not be made. A wire has no end.',
      );
      expect(told.join('\n')).toContain('demo, revision A: draft');
      expect(told.join('\n')).not.toContain('second, revision A');
      expect([hasPage('demo'), hasPage('second')]).toEqual([true, false]);
      expect(await build(noting([]))).toBe(0);
      expect([hasPage('demo'), hasPage('second')]).toEqual([true, true]);
    },
  );

  it('plans no released revision when it builds; a check does, and tells what today would differ', async () => {
    expect((await shop.run('release', 'demo')).status).toBe(0);
    shop.change('content/shop.yaml', '# House', 'rules: { loop-vehicle: 30 in }\n# House');
    const asked: Asked[] = [];
    await build(noting(asked));
    expect(asked.filter((task) => task.name === 'plan').map((task) => task.of)).toEqual([
      'content/jobs/second.yaml',
    ]);
    expect(told.join('\n')).toContain('demo, revision A: released, frozen');
    const { jobs } = await loadShop(effects, noting(asked), { compares: true });
    expect(asked.map((task) => task.of)).toContain('content/jobs/demo.yaml');
    expect(jobs.find(({ job }) => job.id === 'demo')?.changes.join('\n')).toMatch(
      /^length of feed: \d+\.\d+ m, today \d+\.\d+ m$/m,
    );
  });
});
