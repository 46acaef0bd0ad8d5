import { expect, test } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';

/** Counts how often each word occurs. */
function counted(words: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return counts;
}

/** The order of work: nothing forgotten, nothing twice, and a way through it. */
export function orderChecks(plan: () => BuildPlan): void {
  test('every step waits for steps that exist, and none for itself in the end', () => {
    const { steps } = plan();
    const done = new Set<string>();
    for (let before = -1; before !== done.size; ) {
      before = done.size;
      for (const { id, after } of steps) if (after.every((one) => done.has(one))) done.add(id);
    }
    expect(steps.filter(({ id }) => !done.has(id)).map(({ id }) => id)).toEqual([]);
  });

  test('every item and every wire of the job is installed exactly once', () => {
    const { steps, items, wires } = plan();
    const own = [...items, ...wires].filter(({ origin }) => origin === 'job').map(({ id }) => id);
    const installed = counted(steps.flatMap(({ installs }) => installs));
    expect([...installed.keys()].sort()).toEqual([...own].sort());
    expect([...installed.values()].filter((count) => count !== 1)).toEqual([]);
  });

  test('every act is done exactly once: each label, preset, fuse and measurement', () => {
    const { steps, wires, controls, power, measurements } = plan();
    const acts = counted(steps.flatMap((step) => step.acts));
    expect([...acts].filter(([, count]) => count !== 1)).toEqual([]);
    const needed = [
      ...wires.filter(({ origin }) => origin === 'job').map(({ id }) => `label:${id}`),
      ...controls.map(({ item, control }) => `set:${item}.${control}`),
      ...power.fuses.map(({ id }) => `fit-fuse:${id}`),
      ...measurements.map(({ id }) => `measure:${id}`),
    ];
    expect(needed.filter((act) => !acts.has(act))).toEqual([]);
  });

  test('no fuse is fitted before every wire is laid and every board tested', () => {
    const { steps } = plan();
    const byId = new Map(steps.map((step) => [step.id, step]));
    const before = (id: string): Set<string> => {
      const seen = new Set<string>();
      const open = [...(byId.get(id)?.after ?? [])];
      for (let next = open.pop(); next !== undefined; next = open.pop()) {
        if (seen.has(next)) continue;
        seen.add(next);
        open.push(...(byId.get(next)?.after ?? []));
      }
      return seen;
    };
    const fuses = steps.find(({ acts }) => acts.some((act) => act.startsWith('fit-fuse:')));
    if (!fuses) throw new Error('No step fits the fuses.');
    const earlier = before(fuses.id);
    for (const { id, installs, acts } of steps) {
      const lays =
        installs.length > 0 || acts.some((act) => act.startsWith('test:') || act.startsWith('set:'));
      if (lays && id !== fuses.id) expect(earlier.has(id), id).toBe(true);
    }
  });

  test('every step says how it is known to be right', () => {
    for (const { proof, text, minutes } of plan().steps) {
      expect(proof).toMatch(/\S/);
      expect(text).toMatch(/\S/);
      expect(minutes).toBeGreaterThanOrEqual(0);
    }
  });
}
