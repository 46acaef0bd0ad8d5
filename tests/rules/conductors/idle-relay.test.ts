import { expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { changed, linksOf } from '../../short-jobs/links-of.ts';

const sub = '  sub: { part: subwoofer-12-dual-4';
const remedies = (...devices: readonly string[]) => {
  const { job, problems } = linksOf(changed('one-bass-amplifier', [sub, [...devices, sub].join('\n')]));
  if (!job) throw new Error(problems.join('\n'));
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks).flatMap(({ rule, remedy }) =>
    rule === 'terminal-unaccounted' ? [remedy] : [],
  );
};

test('a relay that nothing asks for is told to be taken out, or how all of it is linked', () => {
  const [remedy] = remedies('  spare-relay: { part: relay-30-diode, on: board }');
  expect(remedy).toMatch(
    /^take spare-relay out of devices:, since what turns the devices on does without it; or write/,
  );
  expect(remedy).toMatch(/its coil \(85 and 86\) from what turns it on, such as source-unit\.\S+ to ground/);
  expect(remedy).toMatch(/its contact \(30 and 87\) from a fused way to what it feeds$/);
});

test('with a fan in the job the line that feeds it is told', () => {
  const [remedy] = remedies(
    '  spare-relay: { part: relay-30-diode, on: board }',
    '  fan: { part: fan-80, on: board }',
  );
  expect(remedy).toContain('spare-relay-out: { from: spare-relay.87, to: fan.');
});
