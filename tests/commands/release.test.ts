import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type BuildPlan, buildPlanSchema } from '../../lib/model/plan/index.ts';
import { ShopFolder, stopped } from './shop-folder.ts';

const job = 'content/jobs/demo.yaml';
const frozenA = 'content/jobs/demo/A.plan.json';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder();
});
afterEach(() => shop.remove());

async function planOf(folder: ShopFolder): Promise<BuildPlan> {
  const { out } = await folder.run('plan', 'demo', '--json');
  return buildPlanSchema.parse(JSON.parse(out));
}

const labelsOf = ({ wires }: BuildPlan): Record<string, string> =>
  Object.fromEntries(wires.filter(({ origin }) => origin === 'job').map(({ id, label }) => [id, label]));

describe('release', () => {
  test('refuses where a finding stops the job, and writes nothing', async () => {
    const withStop = new ShopFolder(stopped);
    const before = withStop.read(job);
    const { status, out, told } = await withStop.run('release', 'demo');
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(told).toMatch(/: stop: /);
    expect(told).toMatch(/demo is not released/);
    expect(withStop.read(job)).toBe(before);
    expect(() => withStop.read(frozenA)).toThrow();
    withStop.remove();
  });

  test('refuses where the input has errors, and for a job that is not there', async () => {
    expect((await shop.run('release', 'nobody')).status).toBe(2);
    shop.change('content/guides/gain.md', 'summary:', 'sumary:');
    const { status, told } = await shop.run('release', 'demo');
    expect(status).toBe(2);
    expect(told).toMatch(/content\/guides\/gain\.md/);
    expect(() => shop.read(frozenA)).toThrow();
  });

  test('refuses a revision whose file would be that of a released one on some disks', async () => {
    await shop.run('release', 'demo');
    shop.change(job, 'revision: A', 'revision: a');
    shop.change(job, 'status: released', 'status: draft');
    const { status, told } = await shop.run('release', 'demo');
    expect(status).toBe(2);
    expect(told).toMatch(/revision A is released, and a would be the same file on some disks/);
    expect(() => shop.read('content/jobs/demo/a.plan.json')).toThrow();
  });

  test('keeps the line ends of a job file that was written on another system', async () => {
    const written = `\uFEFF${shop.read(job).replaceAll('\n', '\r\n')}`;
    shop.write(job, written);
    const { status } = await shop.run('release', 'demo');
    expect(status).toBe(0);
    expect(shop.read(job)).toBe(written.replace('status: draft', 'status: released'));
  });

  test('freezes the plan beside the job, and changes one word of the job file', async () => {
    const before = shop.read(job);
    const drafted = await planOf(shop);
    const { status, told } = await shop.run('release', 'demo');
    expect(status).toBe(0);
    expect(told).toContain(frozenA);
    expect(shop.read(job)).toBe(
      before.replace('status: draft # until it is released', 'status: released # until it is released'),
    );
    const frozen = buildPlanSchema.parse(JSON.parse(shop.read(frozenA)));
    expect(frozen).toEqual({ ...drafted, job: { ...drafted.job, status: 'released' } });
    expect(shop.read(frozenA)).not.toMatch(/Specimen|555 0199|QZX/);
    const after = await shop.run('check');
    expect(after.status).toBe(0);
    expect(after.out).toMatch(/demo, revision A: released, frozen; 0 stop/);
    expect(after.told).toBe('');
  });

  test('lists the cautions that stand, and leaves out what the job accepts', async () => {
    shop.change(job, 'to: body.cargo, length: 12 in', 'to: body.cargo, length: 30 in');
    const cautions = (await planOf(shop)).findings.filter(({ level }) => level === 'caution');
    const long = cautions.find(({ rule }) => rule === 'ground-lead-long');
    expect(long).toBeDefined();
    const line = (await shop.run('check')).out.match(/\{ finding: ground-lead-long, .*\}/)?.[0] ?? '';
    const accepted = new ShopFolder();
    accepted.write(
      job,
      `${shop.read(job)}\naccepted:\n  - ${line.replace('reason: , by: ', 'reason: no nearer point, by: L. S. ')}\n`,
    );
    const { status, told } = await shop.run('release', 'demo');
    expect(status).toBe(0);
    expect(told.match(/: caution: /g)).toHaveLength(cautions.length);
    expect(told).toContain(long?.message);
    expect(told).toMatch(
      /is released with (the caution above|the \d+ cautions above), which nobody has accepted;/,
    );
    const { status: done, told: less } = await accepted.run('release', 'demo');
    expect(done).toBe(0);
    expect(less.match(/: caution: /g) ?? []).toHaveLength(cautions.length - 1);
    expect(less).not.toContain(long?.message);
    accepted.remove();
  });

  test('is said beside a file that calls itself a draft again', async () => {
    await shop.run('release', 'demo');
    expect((await shop.run('check')).out).not.toMatch(/its file says draft/);
    shop.write(job, shop.read(job).replace('status: released', 'status: draft'));
    expect((await shop.run('check')).out).toMatch(
      /demo, revision A: released, frozen \(its file says draft: write status: released, or raise revision: to plan anew\); 0 stop/,
    );
  });

  test('a second release of the same revision refuses and leaves the first', async () => {
    await shop.run('release', 'demo');
    const first = shop.read(frozenA);
    const { status, told } = await shop.run('release', 'demo');
    expect(status).toBe(2);
    expect(told).toMatch(/demo, revision A, is released already: raise the revision/);
    expect(shop.read(frozenA)).toBe(first);
  });

  test('house rules that change afterwards change nothing that is shown, and the difference is told', async () => {
    await shop.run('release', 'demo');
    const shown = await planOf(shop);
    shop.change('content/shop.yaml', 'stock:\n', 'rules: { loop-vehicle: 30 in }\nstock:\n');
    const { status, out, told } = await shop.run('check');
    expect(status).toBe(0);
    expect(out).toMatch(/released, frozen; .*; computed differently today in [1-9]\d* places?/);
    expect(told).toMatch(/^content\/jobs\/demo\.yaml:\d+:\d+: revision A is released, but would be/);
    expect(told).toMatch(/^ {2}length of feed: \d+\.\d+ m, today \d+\.\d+ m$/m);
    expect(told).toMatch(/^ {2}to do: build what was released/m);
    expect(await planOf(shop)).toEqual(shown);
  });

  test('a stop that comes up later does not unrelease a revision', async () => {
    await shop.run('release', 'demo');
    shop.change(job, 'holder-a, in: bay', 'holder-a, in: bay, fuse: 200 A');
    const { status, out } = await shop.run('check');
    expect(status).toBe(0);
    expect(out).toMatch(/released, frozen/);
  });

  test('a frozen plan that was tampered with is an error at its file', async () => {
    await shop.run('release', 'demo');
    shop.write(frozenA, '{ "rackleaf": 1 }');
    const { status, told } = await shop.run('check');
    expect(status).toBe(2);
    expect(told).toMatch(/content\/jobs\/demo\/A\.plan\.json:1:1: error: /);
  });

  test('the next revision keeps the labels of the wires that were released, and new wires take new ones', async () => {
    await shop.run('release', 'demo');
    const labelsA = labelsOf(buildPlanSchema.parse(JSON.parse(shop.read(frozenA))));
    shop.change(job, 'revision: A\nstatus: released', 'revision: B\nstatus: draft');
    shop.change(job, '  main-fuse: {', '  rear: { part: woofer-a, in: boot }\n  main-fuse: {');
    shop.change(job, '  tail: {', '  extra: { from: amp.CH1, to: rear.C1, length: 2 ft }\n  tail: {');
    shop.change(job, '  speaker: { from: amp.CH1, to: sub.C1, length: 3 ft }\n', '');
    shop.change(
      job,
      'radio.OUT2: one channel is used',
      'radio.OUT2: one channel is used\n  sub.C1+: kept for later\n  sub.C1-: kept for later',
    );
    const labelsB = labelsOf(await planOf(shop));
    const { 'extra.+': plus, 'extra.-': minus, ...kept } = labelsB;
    const { 'speaker.+': gonePlus, 'speaker.-': goneMinus, ...stayed } = labelsA;
    expect(kept).toEqual(stayed);
    // The number of a wire that is no more is not given to another: its label may still be on a cut end.
    expect(gonePlus).toBe('L1+');
    expect(goneMinus).toBe('L1-');
    expect([plus, minus]).toEqual(['L2+', 'L2-']);
    expect((await shop.run('release', 'demo')).status).toBe(0);
    expect(() => shop.read('content/jobs/demo/B.plan.json')).not.toThrow();
    expect(labelsOf(buildPlanSchema.parse(JSON.parse(shop.read(frozenA))))).toEqual(labelsA);
  });
});

test('sheets of a revision that a later one stands in the place of say SUPERSEDED, in print too', async () => {
  await shop.run('release', 'demo');
  shop.change(job, 'revision: A', 'revision: B');
  shop.change(job, 'status: released', 'status: draft');
  await shop.run('release', 'demo');
  await shop.run('build');
  const [older, current] = ['A', 'B'].map((revision) => shop.read(`dist/jobs/demo/${revision}/index.html`));
  expect(older).toMatch(/<title>SUPERSEDED: /);
  expect(older).toMatch(/top-center \{ content: "SUPERSEDED: do not build from this sheet"/);
  expect(older).not.toMatch(/DRAFT/);
  expect(current).not.toMatch(/SUPERSEDED|DRAFT/);
});
