import { expect, test } from 'vitest';
import { changed, instead, linksOf } from '../../short-jobs/links-of.ts';
import { shop } from '../../short-jobs/short-shop.ts';
import { planKept } from '../plan-kept.ts';

const tap = `parts:
  tap-mini:
    kind: distribution
    title: "Fuse tap in slot 14"
    size: { width: 2 in, depth: 1 in, height: 1 in }
    mass: 0.05 kg
    terminals:
      IN: { role: feed-in, joint: plug }
      TAP: { role: feed-out, joint: supplied-lead, lead: 16 AWG, lead-length: 6 in }
    fused-ways: { TAP: { from: IN, fuse-form: mini-blade } }
    current: 10 A
`;
const fitted =
  'fitted:\n  dash-box: { part: tap-mini, zone: cabin, side: left, fuses: { TAP: 2 A }, left-open: { IN: fed by the vehicle in slot 14 } }\n';

test('a tap in a slot of the vehicle has the fuse of the slot put back, as the step tells that fits its own', () => {
  const files = shop.map((one) => {
    if (one.path.endsWith('vehicles/hatchback.yaml'))
      return { ...one, text: instead(one.text, 'fitted:\n', fitted) };
    if (one.path.endsWith('parts/distribution.yaml'))
      return { ...one, text: instead(one.text, 'parts:\n', tap) };
    return one;
  });
  const text = `${changed('under-seat-five')}\nlinks:\n  turn-on: { from: dash-box.TAP, to: amp.REM, length: 6 ft }\n`;
  const { job, problems } = linksOf(text, files);
  expect(problems).toEqual([]);
  if (!job) throw new Error('The job is read.');
  const { plan } = planKept(job);
  expect(plan.items.flatMap(({ id, tap: isTap }) => (isTap ? [id] : []))).toEqual(['dash-box']);
  expect(plan.power.fuses.map(({ item }) => item)).toContain('dash-box');
  const step = plan.steps.find(({ acts }) => acts.includes('fit-fuse:dash-box.TAP'));
  expect(step?.text).toMatch(/; dash-box plugs into its slot with the fuse that was in the slot back in it/);
});
