import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import { LeastSizes } from '../../lib/plan/power/sizing/least-sizes.ts';
import { inJob, jobFile, partsFile } from '../read/problem-case.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { jobOf, smallPlan } from './plan-small-shop.ts';

/** The small job with its devices, its links and its runs each in another order. */
function reordered(order: (lines: readonly string[]) => readonly string[]): SourceFile[] {
  return smallShop().map(({ path, text }) =>
    path === jobFile
      ? {
          path,
          text: text
            .replace(/(?<=^links:\n)(?: {2}.*\n)+/m, (block) => shuffled(block, order))
            .replace(/(?<=^runs:\n)(?: {2}.*\n)+/m, (block) => shuffled(block, order))
            .replace(/(?<=^devices:\n)(?: {2}.*\n)+/m, (block) => shuffled(block, order)),
        }
      : { path, text },
  );
}

/** A block of YAML with its entries in another order: an entry begins in the third column. */
function shuffled(block: string, order: (lines: readonly string[]) => readonly string[]): string {
  return order(block.split(/(?<=\n)(?= {2}\S)/)).join('');
}

/** Every id and path of a plan, wherever it stands. */
function idsOf({
  items,
  wires,
  terminals,
  controls,
  power,
  audio,
  runs,
  cables,
  steps,
  traces,
}: BuildPlan): string[] {
  return [
    ...[
      ...items,
      ...wires,
      ...power.conductors,
      ...power.fuses,
      ...audio.channels,
      ...runs,
      ...cables,
      ...steps,
    ].map(({ id }) => id),
    ...terminals.map(({ item, terminal }) => `${item}.${terminal}`),
    ...controls.map(({ item, control }) => `${item}.${control}`),
    ...power.points.flatMap(({ name, elements, nodes }) =>
      [...elements, ...nodes].map(({ id }) => `${name} ${id}`),
    ),
    ...Object.keys(traces),
  ].toSorted();
}

describe('planning', () => {
  test('the same job twice gives the same plan, byte for byte', () => {
    const text = () => JSON.stringify(planJob(jobOf(smallShop())));
    expect(text()).toBe(text());
    const job = jobOf(smallShop());
    expect(JSON.stringify(planJob(job))).toBe(JSON.stringify(planJob(job)));
  });

  test('does not change the job that it is given', () => {
    const job = jobOf(smallShop());
    const before = structuredClone({
      devices: job.devices,
      links: job.links,
      rules: job.rules,
      parts: job.parts,
    });
    planJob(job);
    expect({ devices: job.devices, links: job.links, rules: job.rules, parts: job.parts }).toEqual(before);
  });

  test('the order of the files does not matter', () => {
    const text = (files: readonly SourceFile[]) => JSON.stringify(planJob(jobOf(files)));
    expect(text(smallShop().toReversed())).toBe(text(smallShop()));
  });

  test('devices, links and runs in any order of the file keep every id, size and fuse', () => {
    const { plan } = smallPlan();
    const sizes = (of: BuildPlan) =>
      Object.fromEntries(
        of.wires.map(({ id, size, lengthM }) => [id, `${size.label} ${lengthM.toFixed(9)}`]),
      );
    const fuses = (of: BuildPlan) =>
      Object.fromEntries(of.power.fuses.map(({ id, ratingA }) => [id, ratingA]));
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat()), (numbers) => {
        const keys = new Map<string, number>();
        const order = (lines: readonly string[]) => {
          for (const line of lines) keys.set(line, numbers.next().value);
          return lines.toSorted((a, b) => (keys.get(a) ?? 0) - (keys.get(b) ?? 0));
        };
        const other = planJob(jobOf(reordered(order))).plan;
        expect(idsOf(other)).toEqual(idsOf(plan));
        expect(sizes(other)).toEqual(sizes(plan));
        expect(fuses(other)).toEqual(fuses(plan));
      }),
      { numRuns: 8 },
    );
  });

  test('adding a device changes no other id', () => {
    // A port that two conductors may share: what is refused has no strip length to tell of.
    const roomy = ['positive', 'negative'].map((sign): Change => {
      const role = `role: speaker-out-${sign}`;
      return [partsFile, `{ ${role} }`, `{ ${role}, joint: set-screw, conductors: 2 }`];
    });
    // So little that the battery charges at idle, with one subwoofer and with two: a reserve is there or not by that.
    roomy.push(['content/vehicles/wagon.yaml', 'vehicle-load: 45 A', 'vehicle-load: 20 A']);
    const { plan } = smallPlan(...roomy);
    const more = smallPlan(
      ...roomy,
      inJob('  sub: {', '  sub-two: { part: woofer-a, in: boot }\n  sub: {'),
      inJob('  speaker: {', '  speaker-two: { from: amp.CH1, to: sub-two.C1, length: 3 ft }\n  speaker: {'),
    ).plan;
    const now = new Set(idsOf(more));
    expect(idsOf(plan).filter((id) => !now.has(id))).toEqual([]);
  });

  test('the loop between size and length ends, and says in how many rounds', () => {
    for (const length of ['1 ft', '20 ft', '300 ft'])
      expect(smallPlan(inJob('to: amp.B+ }', `to: amp.B+, length: ${length} }`)).plan.passes).toBeLessThan(
        12,
      );
  });
});

describe('least sizes', () => {
  test('whatever is asked in whatever order, a size never shrinks and the largest reason stays', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom('a', 'b'), fc.integer({ min: 1, max: 100 }))),
        (asked) => {
          const least = new LeastSizes();
          for (const [link, area] of asked) {
            const before = least.of(link).areaMm2;
            least.raise(link, area, `asked ${area}`);
            expect(least.of(link).areaMm2).toBe(Math.max(before, area));
          }
          for (const link of ['a', 'b']) {
            const most = Math.max(0, ...asked.filter(([one]) => one === link).map(([, area]) => area));
            expect(least.of(link)).toEqual({ areaMm2: most, why: most === 0 ? '' : `asked ${most}` });
          }
        },
      ),
    );
  });
});
