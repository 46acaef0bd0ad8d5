import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/judge.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { changed, linksOf, shopWith } from '../links-of.ts';
import { shop } from '../short-shop.ts';

/** Coils in parallel, 2 ohm: a bass lead of 12 AWG, 3.3 mm2, and a jumper like it (common practice, no source). */
const told = (terminals: string | null) => {
  const from =
    'C1..2: { role: coil, joint: binding-post, takes: 14 AWG to 8 AWG, strip: 1/2 in,\n        conductors: 2 }';
  const files =
    terminals === null ? shop : shopWith('parts/speakers.yaml', from, `C1..2: { role: coil, ${terminals} }`);
  const { job, problems, proposed } = linksOf(changed('one-bass-amplifier'), files);
  if (!job) throw new Error(problems.join('\n'));
  const { plan, remarks } = planKept(job);
  const rules = ['port-refuses-conductor', 'port-shared', 'joint-overloaded', 'joint-off-size'];
  return {
    joint: job.file.links['sub-jumper']?.joint,
    reason: proposed('sub-jumper')?.reason,
    joints: (plan.joints ?? []).map(({ id, trunk }) => [id, trunk]),
    findings: judge(job, plan, remarks)
      .filter(({ rule }) => rules.includes(rule))
      .map(({ rule, message }) => `${rule}: ${message}`),
  };
};

describe('the jumper of coils in parallel', () => {
  test('goes into the terminal beside the lead where that takes both: 8 AWG is 8.4 mm2', () => {
    const { joint, joints, findings } = told(null);
    expect(joint).toBeUndefined();
    expect(joints).toEqual([]);
    expect(findings).toEqual([]);
  });

  test.each([
    ['takes less than both', 'joint: binding-post, takes: 16 AWG to 12 AWG, strip: 10 mm, conductors: 2'],
    ['allows one conductor', 'joint: binding-post, takes: 14 AWG to 8 AWG, strip: 10 mm'],
  ])('is joined to the lead before a terminal that %s', (_, terminals) => {
    const { joint, reason, joints, findings } = told(terminals);
    expect(joint).toEqual({ with: 'to-sub' });
    expect(reason).toMatch(/joined to to-sub before the terminal, which does not take both$/);
    expect(joints).toEqual([
      ['sub-jumper.+', 'to-sub.+'],
      ['sub-jumper.-', 'to-sub.-'],
    ]);
    expect(findings).toEqual([]);
  });
});
