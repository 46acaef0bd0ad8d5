import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { changed, linksOf } from '../links-of.ts';

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
