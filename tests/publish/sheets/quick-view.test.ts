import { expect, test } from 'vitest';
import type { PlanControl } from '../../../lib/model/plan/index.ts';
import { quickView } from '../../../lib/publish/sheets/quick/quick-view.ts';
import { samplePlan } from '../sample/sample-plan.ts';

/** The lines of the presets as the quick view shows them. */
function presetLines(...changes: readonly Partial<PlanControl>[]) {
  const plan = samplePlan();
  const [sample] = plan.controls;
  if (!sample) throw new Error('The sample plan has a control.');
  const controls = changes.map((change): PlanControl => ({ ...sample, ...change }));
  const sheet = quickView.model({ ...plan, controls });
  const part = sheet?.parts.find(({ title }) => title === 'Presets before first power');
  const lines = part?.groups.flatMap((group) => group.lines) ?? [];
  return lines.map(({ figure, name, beside }) => [figure, name, beside]);
}

test('controls of a device in one state are one line, those that are not safe each with the state that is', () => {
  const unsafe = { preset: 'on', safe: false, safeState: 'off' };
  expect(
    presetLines(
      { control: 'BOOST', ...unsafe },
      { control: 'LEVEL', ...unsafe, safeState: 'at 0 dB' },
      { control: 'REMOTE', ...unsafe },
      { control: 'FILTER', ...unsafe, safe: true, safeState: 'on' },
    ),
  ).toEqual([
    ['on', 'amp-front BOOST, REMOTE', 'NOT SAFE: off is'],
    ['on', 'amp-front LEVEL', 'NOT SAFE: at 0 dB is'],
    ['on', 'amp-front FILTER', ''],
  ]);
});

test('findings are counted as causes are: what only follows from one is no finding more', () => {
  const plan = samplePlan();
  const [sample] = plan.findings;
  if (!sample) throw new Error('The sample plan has a finding.');
  const caution = { ...sample, level: 'caution' } as const;
  const findings = [{ ...caution, follows: [caution, caution] }];
  expect(quickView.model({ ...plan, findings })?.state[0]).toBe('1 caution');
});
