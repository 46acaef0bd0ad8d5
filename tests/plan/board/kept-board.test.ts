import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { canonicalText } from '../../../lib/kept/canonical-text.ts';
import { keeperOf } from '../../../lib/kept/keeper.ts';
import { openStore } from '../../../lib/kept/store.ts';
import { computeAnew, type Keep } from '../../../lib/model/keep.ts';
import { planJob } from '../../../lib/plan/plan-job.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { fixedRoot } from '../../boards/fixed-jobs.ts';
import { ShopInFolder } from '../../shops/shop-in-folder.ts';

const id = 'under-seat-five';
/** A change of the board itself. */
const narrower = ['width: 17 in, height: 12 in', 'width: 16.5 in, height: 12 in'] as const;
const { files } = new ShopInFolder(fixedRoot);

/** The plan of a job with a board, as text, with one text of the job's file exchanged. */
function planned(keep: Keep, found = '', instead = ''): string {
  const changed = files.map(({ path, text }) => {
    if (!path.endsWith(`/${id}.yaml`)) return { path, text };
    if (!text.includes(found)) throw new Error(`The job has no "${found}".`);
    return { path, text: text.replaceAll(found, () => instead) };
  });
  const job = readContent(changed).jobs.find((one) => one.id === id);
  if (!job) throw new Error('The job can not be read.');
  return canonicalText(planJob(job, keep));
}

describe('a job with a board, its steps kept', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kept-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** The plan, and the steps that had to be computed for it. */
  const withKept = (found = '', instead = ''): { readonly plan: string; readonly computed: string[] } => {
    const computed: string[] = [];
    const { keep } = keeperOf(openStore(folder), 'this code');
    const noting: Keep = (step, input) => {
      const compute: typeof step.compute = (given) => {
        computed.push(step.id);
        return step.compute(given, noting);
      };
      return keep({ ...step, compute }, input);
    };
    return { plan: planned(noting, found, instead), computed };
  };

  it('has the plan that it has without, and computes nothing of its board again', () => {
    const first = withKept();
    expect(first.plan).toBe(planned(computeAnew));
    expect(new Set(first.computed)).toEqual(
      new Set([
        'plan-body',
        'settled',
        'room',
        'layout',
        'proposals',
        'routing',
        'dressed',
        'on-tracks',
        'stiffness',
        'fit',
        'placements',
      ]),
    );
    expect(withKept()).toEqual({ plan: first.plan, computed: [] });
  });

  it.each([
    ['corner: 80 Hz', 'corner: 85 Hz', ['plan-body']],
    // Sizes follow from it: they are settled anew, on the board that stands.
    ['length: 6 in', 'length: 7 in', ['plan-body', 'settled']],
  ])('searches no board after an edit that leaves it alone: %s', (found, instead, anew) => {
    const { plan, computed } = withKept(found, instead);
    expect(computed).toEqual(anew);
    expect(plan).not.toBe(withKept().plan);
  });

  it('computes nothing of its plan again for what its head alone says', () => {
    const { plan, computed } = withKept('"One five-channel amplifier', '"A five-channel amplifier');
    expect(computed).toEqual([]);
    expect(plan).not.toBe(withKept().plan);
  });

  it('searches its board anew where that was changed, and comes to the plan that it has without', () => {
    const { plan, computed } = withKept(...narrower);
    expect(computed).toContain('layout');
    expect(computed).toContain('routing');
    expect(plan).toBe(planned(computeAnew, ...narrower));
  });
});
