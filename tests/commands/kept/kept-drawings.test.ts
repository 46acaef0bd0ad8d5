import { deserialize, serialize } from 'node:v8';
import { beforeAll, describe, expect, test } from 'vitest';
import { keptDrawings } from '../../../lib/commands/kept/kept-drawings.ts';
import { drawJob } from '../../../lib/draw/draw-job.ts';
import { keeperOf } from '../../../lib/kept/keeper.ts';
import type { Store } from '../../../lib/kept/store.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { shippedMetrics as metrics } from '../../draw/lettering/shipped-metrics.ts';

/** A store in memory that says what it was given to keep. */
function storeIn(kept: Map<string, Uint8Array>): { readonly store: Store; readonly written: () => string[] } {
  const written: string[] = [];
  const store: Store = {
    read: (step, key) => {
      const found = kept.get(`${step} ${key}`);
      return found ? { value: deserialize(found) } : null;
    },
    write: (step, key, value) => {
      written.push(step);
      kept.set(`${step} ${key}`, serialize(value));
    },
    fault: () => null,
    hasWritten: () => written.length > 0,
    trim: () => undefined,
  };
  return { store, written: () => written.splice(0) };
}

/** Changes of a plan, each by itself, and how many kinds are drawn anew for it at most. */
const changes: readonly (readonly [what: string, most: number, change: (plan: BuildPlan) => BuildPlan])[] = [
  ['nothing', 0, (one) => one],
  ['the title of the job', 0, (one) => ({ ...one, job: { ...one.job, title: 'Another title' } })],
  ['a note', 0, (one) => ({ ...one, job: { ...one.job, notes: ['Another note'] } })],
  [
    'a finding that stops nothing',
    0,
    (one) => ({
      ...one,
      findings: one.findings.flatMap((finding) =>
        finding.level === 'stop' ? [finding] : [finding, finding],
      ),
    }),
  ],
  ['every trace', 0, (one) => ({ ...one, traces: {} })],
  ['what is picked', 0, (one) => ({ ...one, pick: [] })],
  [
    'lengths of wires',
    2,
    (one) => ({ ...one, wires: one.wires.map((wire) => ({ ...wire, lengthM: wire.lengthM + 0.05 })) }),
  ],
  [
    'a level of a sum of responses',
    1,
    ({ audio, ...one }) => {
      const sums = audio.curves.sums.map((sum) => ({
        ...sum,
        levelsDb: sum.levelsDb.map((levelDb) => levelDb - 3),
      }));
      return { ...one, audio: { ...audio, curves: { ...audio.curves, sums } } };
    },
  ],
  ['who drew it', 9, (one) => ({ ...one, job: { ...one.job, drawnBy: 'B. C.' } })],
  [
    'a colour',
    3,
    (one) => ({
      ...one,
      wires: one.wires.map((wire, at) => (at === 3 ? { ...wire, colour: 'pink' } : wire)),
    }),
  ],
  ['a board less', 9, (one) => ({ ...one, boards: [] })],
];

describe('drawings that are kept', () => {
  const { store, written } = storeIn(new Map());
  const keeper = keeperOf(store, 'the code');
  const plan = () => fixedPlan('under-seat-five');
  beforeAll(() => {
    keptDrawings(plan(), metrics, keeper);
    written();
  });

  test.each(changes)('after a change of %s are those that are drawn from cold', (_, most, change) => {
    const changed = change(plan());
    const drawn = drawJob(changed, metrics);
    expect(keptDrawings(changed, metrics, keeper)).toEqual(drawn);
    expect(written().filter((step) => step === 'drawings-of-kind').length).toBeLessThanOrEqual(most);
    expect(keptDrawings(changed, metrics, keeper)).toEqual(drawn);
    expect(written()).toEqual([]);
  });

  test.each(fixedJobs)(
    'of %s are its own, beside those of other jobs',
    (id) => {
      const own = fixedPlan(id);
      const drawn = drawJob(own, metrics);
      expect(keptDrawings(own, metrics, keeper)).toEqual(drawn);
      expect(keptDrawings(own, metrics, keeper)).toEqual(drawn);
    },
    600_000,
  );
});
