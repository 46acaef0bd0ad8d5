import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { changed, linksOf, shopWith } from '../links-of.ts';

/** The subwoofer of a short job with both coils in a box that brings a cup and its own lead. */
const cupped = (...changes: readonly (readonly [from: string, to: string])[]) => {
  const read = linksOf(
    changed('one-bass-amplifier', ['enclosure-ported-45', 'enclosure-sealed-28-cup'], ...changes),
  );
  if (!read.job) throw new Error(read.problems.join('\n'));
  const { plan, remarks } = planKept(read.job);
  return { ...read, plan, findings: judge(read.job, plan, remarks) };
};

describe('a box with a terminal cup', () => {
  const { links, problems, plan, findings } = cupped();

  test('is where the run to its subwoofer ends, by what the cup takes', () => {
    expect(problems).toEqual([]);
    expect(Object.values(links)).toContainEqual(expect.stringMatching(/^amp\S* sub-box\.CUP$/));
    const ends = plan.wires
      .flatMap((wire) => wire.ends)
      .filter(({ terminal }) => terminal.startsWith('sub-box.CUP'));
    expect(ends.map(({ stripM }) => stripM)).toEqual([0.012, 0.012]);
  });

  test('drives its subwoofer by its own lead, which is no wire of the job', () => {
    expect(plan.audio.speakers).toContainEqual(expect.objectContaining({ id: 'sub', polarity: 'normal' }));
    expect(plan.audio.channels.flatMap(({ speakers }) => speakers)).toContain('sub');
    const own = plan.terminals.filter(({ item }) => item === 'sub');
    expect(own.map(({ state }) => state)).toEqual(own.map(() => 'connected'));
    expect(own).toHaveLength(4);
    const step = plan.steps.find(({ text }) => text.includes('join the lead inside the box to its speaker'));
    expect(step?.text).toMatch(/CUP\+ to sub\.C1\+, CUP- to sub\.C[12]-/);
    expect(findings.filter(({ rule }) => /unaccounted|coil-left-open|without-channel/.test(rule))).toEqual(
      [],
    );
  });

  test('takes the minus of the output at its plus where the subwoofer is meant to be reversed', () => {
    const turned = cupped(['box: ', "reversed: 'the box faces the seats', box: "]);
    expect(turned.links).toMatchObject({
      'to-sub-plus': expect.stringMatching(/\+ sub-box\.CUP-$/),
      'to-sub-minus': expect.stringMatching(/- sub-box\.CUP\+$/),
    });
    expect(turned.plan.audio.speakers).toContainEqual(
      expect.objectContaining({ id: 'sub', polarity: 'reversed' }),
    );
  });
});

describe('a box with a cup in which no lead lies', () => {
  const box = '  enclosure-sealed-28-cup:\n    kind: enclosure\n';
  const read = linksOf(
    changed('one-bass-amplifier', ['enclosure-ported-45', 'enclosure-sealed-28-cup']),
    shopWith('enclosures.yaml', box, `${box}    lead-inside: false\n`),
  );
  if (!read.job) throw new Error(read.problems.join('\n'));
  const { job } = read;
  const { plan, remarks } = planKept(job);
  const leads = plan.wires.filter(({ id }) => id.startsWith('sub-lead'));

  test('has it proposed from the cup to the coils, and cut, labelled and ended as a wire of the job', () => {
    expect(read.links['sub-lead'] ?? read.links['sub-lead-plus']).toMatch(/^sub-box\.CUP\+? sub\.C1\+?$/);
    expect(leads).toHaveLength(2);
    expect(new Set(leads.map(({ label }) => label)).size).toBe(2);
    expect(leads.flatMap(({ ends }) => ends.map(({ form }) => form))).not.toContain('refused');
    expect(judge(job, plan, remarks).filter(({ level }) => level === 'stop')).toEqual([]);
  });

  // By hand: 15 3/4, 11 and 15 in make a diagonal of 24.37 in, with the loop of 6 in at a speaker 30.37: 31 in, 787.4 mm.
  test('is as long as from corner to corner with the loop at a speaker, to the next inch', () => {
    expect(leads.map(({ lengthM }) => lengthM)).toEqual([0.7874, 0.7874]);
  });

  test('counts in the loss of the channel beside the run to the cup', () => {
    const [channel] = plan.audio.channels.filter(({ speakers }) => speakers.includes('sub'));
    const { plan: whole } = cupped();
    const [before] = whole.audio.channels.filter(({ speakers }) => speakers.includes('sub'));
    expect(channel?.loadOhm).toBe(before?.loadOhm);
    expect(channel?.wireLossDb ?? 0).toBeGreaterThan(before?.wireLossDb ?? Number.POSITIVE_INFINITY);
  });

  test('is joined before the speaker goes into its opening', () => {
    const text = (id: string) => plan.steps.find((step) => step.id === id)?.text ?? '';
    const labels = leads.map(({ label }) => label);
    const mount = plan.steps.find(({ text: one }) => one.includes('out of its opening until'));
    for (const label of labels) {
      expect(mount?.text).toContain(label);
      expect(text('connect-speaker').split('inside the box join')[1]).toContain(label);
    }
    expect(mount?.text).not.toContain('join the lead inside the box to its speaker');
  });
});

describe('a box whose maker tells how long its lead is', () => {
  const box = '  enclosure-sealed-28-cup:\n    kind: enclosure\n';
  const read = linksOf(
    changed('one-bass-amplifier', ['enclosure-ported-45', 'enclosure-sealed-28-cup']),
    shopWith('enclosures.yaml', box, `${box}    lead-inside: 600 mm\n`),
  );
  if (!read.job) throw new Error(read.problems.join('\n'));
  const { plan } = planKept(read.job);
  const whole = cupped();
  const channelOf = (of: typeof plan) => of.audio.channels.find(({ speakers }) => speakers.includes('sub'));

  test('has none proposed, and none cut', () => {
    expect(Object.keys(read.links)).toEqual(Object.keys(whole.links));
    const lengths = (of: typeof plan) => of.wires.map(({ id, lengthM }) => [id, lengthM]);
    expect(lengths(plan)).toEqual(lengths(whole.plan));
    expect(plan.steps.some(({ text }) => text.includes('join the lead inside the box'))).toBe(true);
  });

  test('counts in the loss of its channel, and in what a meter reads at the plug', () => {
    const sizes = (of: typeof plan) =>
      of.wires.flatMap(({ role, size }) => (role === 'speaker' ? size.label : []));
    expect(sizes(plan)).toEqual(sizes(whole.plan));
    const own = plan.wires.find(({ to }) => to.startsWith('sub-box.CUP'));
    expect(own?.size.label).toBe('12 AWG');
    const ohm = (of: typeof plan) => channelOf(of)?.dcResistanceOhm?.fromOhm ?? Number.NaN;
    // NEC chapter 9 table 8: 12 AWG stranded, uncoated, 1.98 ohm in 1,000 ft at 75 C, 0.00323 less for each K below, at 60 C;
    // out and back through 600 mm.
    const perM = (1.98 / 304.8) * (1 - 0.00323 * 15);
    expect((ohm(plan) - ohm(whole.plan)) / (1.2 * perM)).toBeCloseTo(1, 1);
    expect(channelOf(plan)?.wireLossDb).toBeGreaterThan(channelOf(whole.plan)?.wireLossDb ?? Number.NaN);
  });
});
