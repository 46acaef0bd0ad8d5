import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildCircuit } from '../../../../lib/plan/power/circuit/circuit.ts';
import { conductorSizer, type SizerTask } from '../../../../lib/plan/power/sizing/conductor-sizer.ts';
import { smallShop } from '../../../read/small-shop.ts';
import { jobOf } from '../../plan-small-shop.ts';

const job = jobOf(smallShop());
const devices = new Map(job.devices.map((device) => [device.id, device]));
const { roles } = buildCircuit(job, devices);
const sizer = () => conductorSizer(job, devices, roles);

const few = (...values: readonly number[]) => fc.constantFrom(...values);
/** Conductors in words of which many come twice, and many differ in one alone. */
const anyTask: fc.Arbitrary<SizerTask> = fc
  .record({
    link: fc.constantFrom(...job.links),
    lengthM: few(0.3, 4),
    neededA: few(0, 60, 150, Number.POSITIVE_INFINITY),
    ratedA: few(0, 60),
    leastMm2: few(0, 21),
    why: fc.constantFrom(null, 'its drop asks for it'),
    feed: fc.option(fc.record({ conductanceSm: few(0, 1e6), why: fc.constantFrom('feed', 'other') }), {
      nil: undefined,
    }),
  })
  .map(({ feed, ...task }) => ({
    ...task,
    role: roles.get(task.link.id) ?? 'power',
    ...(feed && { feed }),
  }));

test('what was sized before says what it would say now, whatever else was asked meanwhile', () => {
  fc.assert(
    fc.property(fc.array(anyTask, { minLength: 2, maxLength: 12 }), (tasks) => {
      const remembering = sizer();
      for (const task of tasks) expect(remembering.size(task)).toEqual(sizer().size(task));
      for (const task of tasks) expect(remembering.size(task)).toBe(remembering.size({ ...task }));
    }),
  );
});
