import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Crew, openCrew } from '../../../lib/commands/crew/crew.ts';
import type { JobFiles } from '../../../lib/commands/kept/shop-steps.ts';
import { canonicalText } from '../../../lib/kept/canonical-text.ts';
import { nothingReleased } from '../../../lib/model/content/built.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { contentFiles } from '../../../lib/read/read-content.ts';
import { startCompiled } from '../../compiled/compiled-code.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';

/** The files of the small shop's job under an id of its own. */
function jobOf(id: string, ...changes: readonly Change[]): JobFiles {
  const { jobs, guides: _, ...shop } = contentFiles(smallShop(...changes));
  const [job] = jobs;
  if (!job) throw new Error('The small shop has a job.');
  const path = job.path.replace('demo', id);
  return {
    ...shop,
    job: { path, text: job.text.replace('id: demo', `id: ${id}`) },
    released: nothingReleased,
    promised: [],
  };
}

beforeAll(startCompiled);

describe('a crew', () => {
  let keptIn: string;
  const opened: Crew[] = [];
  const open = (options: Parameters<typeof openCrew>[0]): Crew => {
    const crew = openCrew(options);
    opened.push(crew);
    return crew;
  };
  beforeEach(() => {
    keptIn = mkdtempSync(join(tmpdir(), 'crew-'));
  });
  afterEach(async () => {
    for (const crew of opened.splice(0)) await crew.close();
    rmSync(keptIn, { recursive: true, force: true });
  });

  /** Tasks are handed out once all that were asked for in one turn are known. */
  const handedOut = () => new Promise((resolve) => setImmediate(() => setImmediate(resolve)));

  /** Plans and drawings of two jobs, as text. */
  const work = async (crew: Crew): Promise<string> => {
    const plans = await Promise.all(['a', 'b'].map((id) => crew.task('plan', jobOf(id))));
    const drawn = await Promise.all(
      plans.map((plan) => (plan.state === 'done' && plan.value ? crew.task('draw', plan.value) : plan)),
    );
    expect([...plans, ...drawn].map(({ state }) => state)).toEqual(Array.from({ length: 4 }, () => 'done'));
    return canonicalText([plans, drawn]);
  };

  it('gives the same with none, one and several threads, with results kept by crews that share a store, read again, and not kept', async () => {
    const alone = await work(open({ keptIn: null, threads: 0 }));
    expect(await work(open({ keptIn: null, threads: 2, few: 'on a thread' }))).toBe(alone);
    const crews = [1, 2].map(() => open({ keptIn, threads: 1, few: 'on a thread' }));
    expect(await Promise.all(crews.map(work))).toEqual([alone, alone]);
    expect(await work(open({ keptIn, threads: 2, few: 'on a thread' }))).toBe(alone);
    expect(await work(open({ keptIn, threads: 0 }))).toBe(alone);
    expect(crews.map((crew) => crew.fault())).toEqual([null, null]);
  });

  it('answers with what failed, in words, and goes on with the next task', async () => {
    const crew = open({ keptIn, threads: 1, few: 'on a thread' });
    const plan = await crew.task('plan', jobOf('a'));
    if (plan.state !== 'done' || !plan.value) throw new Error('The job was not planned.');
    // A board without anything: no plan of ours has one, and drawing it breaks down.
    const broken: BuildPlan = JSON.parse(JSON.stringify({ ...plan.value, boards: [{}] }));
    const done = await crew.task('draw', broken);
    expect(done.state).toBe('failed');
    expect(JSON.stringify(done)).toMatch(/This should not have happened/);
    expect((await crew.task('draw', plan.value)).state).toBe('done');
  });

  it('ends the work of a task that is not wanted any more, and does the others', async () => {
    const crew = open({ keptIn, threads: 1, few: 'on a thread' });
    const stop = new AbortController();
    const dropped = crew.task('plan', jobOf('a'), stop.signal);
    const waits = crew.task('plan', jobOf('b'), stop.signal);
    const wanted = crew.task('plan', jobOf('c'));
    // The first is with the thread by then, which has not even started.
    await handedOut();
    stop.abort(new Error('saved anew'));
    await expect(dropped).rejects.toThrow('saved anew');
    await expect(waits).rejects.toThrow('saved anew');
    expect((await wanted).state).toBe('done');
    await expect(crew.task('plan', jobOf('a'), stop.signal)).rejects.toThrow('saved anew');
  });

  it('plans all the same where nothing can be kept, and says why, of threads too', async () => {
    const file = join(keptIn, 'file');
    writeFileSync(file, 'no folder');
    for (const threads of [0, 1]) {
      const crew = open({ keptIn: file, threads, few: 'on a thread' });
      expect((await crew.task('plan', jobOf('a'))).state).toBe('done');
      expect(crew.fault()).toMatch(/EEXIST|ENOTDIR/);
    }
  });

  it('has no plan of a job that can not be read', async () => {
    const crew = open({ keptIn, threads: 0 });
    const unread = jobOf('a', ['content/jobs/demo.yaml', 'to: amp.REM', 'to: amp.RME']);
    expect(await crew.task('plan', unread)).toEqual({ state: 'done', value: null });
  });
});
