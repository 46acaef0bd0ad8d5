import { appendFileSync, readFileSync } from 'node:fs';
import { Script } from 'node:vm';
import { type RunnerTestCase, TestRunner } from 'vitest';
import { codeSwitch, ranBetweenTests, runsThrough } from './switch.ts';
import { type Told, toldLine, tryingVariable } from './told.ts';

interface Trying {
  /** The numbers of the changes to try, and how many tests each may be tried by. */
  readonly changes: Readonly<Record<string, number>>;
  /** The file to which is added what becomes of them. */
  readonly told: string;
}

/** A change may take so much longer than the test takes without it, and no less than this. */
const slower = 10;
const leastMs = 20_000;
/** It may be run through so many times more often. */
const moreOften = 100;

declare global {
  var __runTest__: (() => unknown) | undefined;
}
const runTest = new Script('globalThis.__runTest__()');

/**
 * Runs each test as it is, and then once more with each change awake that it ran through and that no test has told:
 * in one process that has loaded the code once. What does not come to an end is broken off.
 */
export default class InPlaceRunner extends TestRunner {
  readonly #trying: Trying = JSON.parse(readFileSync(process.env[tryingVariable] ?? '', 'utf8'));
  readonly #untold = new Map(Object.entries(this.#trying.changes));

  async runTask(test: RunnerTestCase): Promise<void> {
    const body = TestRunner.getTestFn(test);
    if (!body) throw new Error(`There is no test in ${test.name}.`);
    // What is worked out once for several tests is not run through again, with a change awake or without.
    await runsThrough(test.id, body);
    const begun = performance.now();
    const hits = await runsThrough(test.id, body);
    const limitMs = leastMs + slower * (performance.now() - begun);
    const met = [...hits].filter(([id]) => (this.#untold.get(id) ?? 0) > 0);
    for (const [id, count] of met) await this.#tryChange(test, id, { body, count, limitMs });
    // What a change left behind in a module would speak for the next one.
    if (met.length > 0) await runsThrough(test.id, body);
  }

  async #tryChange(
    test: RunnerTestCase,
    id: string,
    { body, count, limitMs }: { body: () => unknown; count: number; limitMs: number },
  ): Promise<void> {
    const at = codeSwitch();
    this.#untold.set(id, (this.#untold.get(id) ?? 0) - 1);
    this.#say({ trying: id, limitMs });
    Object.assign(at, { activeMutant: id, hitCount: 0, hitLimit: count * moreOften });
    globalThis.__runTest__ = body;
    try {
      await runsThrough(test.id, () => runTest.runInThisContext({ timeout: Math.ceil(limitMs) }));
      if ((at.hitCount ?? 0) > count * moreOften) throw new Error('run through without end');
    } catch {
      this.#untold.delete(id);
      this.#say({ told: id, by: `${test.file.name} ${test.name}` });
    } finally {
      Object.assign(at, { activeMutant: undefined, hitCount: undefined });
    }
  }

  override onAfterRunFiles(): void {
    super.onAfterRunFiles();
    const between = ranBetweenTests().filter((id) => this.#untold.has(id));
    this.#say({ between });
  }

  override async onAfterRunSuite(suite: Parameters<TestRunner['onAfterRunSuite']>[0]): Promise<void> {
    await super.onAfterRunSuite(suite);
    if ('filepath' in suite) this.#say({ done: suite.name });
  }

  #say(line: Told): void {
    appendFileSync(this.#trying.told, toldLine(line));
  }
}
