import { expect, test } from 'vitest';
import { jobOf } from '../../rules/case.ts';
import { withoutBoard, written } from '../../rules/content.ts';
import { planKept } from '../plan-kept.ts';

/** What is told of line links for which there is no reel, where the catalogue has leads of such plugs. */
function remedyWith(plugs: string) {
  const content = written();
  for (const [part, spec] of Object.entries(content.parts))
    if (spec.kind === 'wire') Object.assign(spec, { for: spec.for.filter((use) => use !== 'signal') });
    else if (spec.kind === 'cable') delete content.parts[part];
  const lead = (length: string) => ({
    ...{ kind: 'cable' as const, title: 'Lead', form: 'coaxial' as const, insulation: '70 C' },
    conductors: { left: { size: '24 AWG', colour: 'WH' }, right: { size: '24 AWG', colour: 'RD' } },
    ...{ for: ['signal' as const], 'made-length': length, plugs },
  });
  Object.assign(content.parts, {
    'lead-short': lead('300 mm'),
    'lead-two': lead('2 m'),
    'lead-six': lead('6 m'),
  });
  for (const [id, length] of [
    ['signal-1', '1 m'],
    ['signal-2', '1.2 m'],
    ['radio-signal', '5 m'],
  ] as const)
    Object.assign(content.job.links[id] ?? {}, { length });
  withoutBoard(content);
  const { remarks } = planKept(jobOf(content));
  return remarks.find(({ remark }) => /for signal conductors/.test(String(remark.message)))?.remark.remedy;
}

test('line links without a reel are told with the finished lines of leads that reach', () => {
  const remedy = String(remedyWith('phono'));
  expect(remedy).toMatch(/lead-amp: \{ part: lead-two \}/);
  expect(remedy).toMatch(/lead-dsp: \{ part: lead-six \}/);
  expect(remedy).toMatch(/at signal-1 cable: lead-amp, conductors: \[left\]/);
  expect(remedy).toMatch(/at signal-2 cable: lead-amp, conductors: \[right\]/);
  expect(remedy).toMatch(/at radio-signal cable: lead-dsp, conductors: \[left\]/);
});

test('and without them where no lead plugs in there', () => {
  expect(remedyWith('jack')).toMatch(/^lay them in a cable: write cables:/);
});
