import { computeAnew } from '../../../lib/model/keep.ts';
import { onceEach } from '../../../lib/plan/once-each.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import type { NetworkInput } from '../../../lib/plan/power/operating-points.ts';
import { conductorSizer } from '../../../lib/plan/power/sizing/conductor-sizer.ts';
import { fuseChooser } from '../../../lib/plan/power/sizing/fuse-chooser.ts';
import type { PowerSizing } from '../../../lib/plan/power/sizing/power-sizing.ts';
import { settleJob } from '../../../lib/plan/settle-job.ts';
import type { Settled } from '../../../lib/plan/settle-sizes.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobOf as writtenJob } from '../../rules/case.ts';
import { type Written, withoutBoard, written } from '../../rules/content.ts';
import { jobOf } from '../plan-small-shop.ts';

/** Each is settled once: many tests ask different things of one. */
const settledOnce = onceEach(
  (_key: string, job: () => Parameters<typeof settleJob>[0]) =>
    settleJob(job(), new PlanBook(), computeAnew).settled,
  (key) => key,
);

/** The supply side of the small job of the rules' tests, without a board, once its sizes stand. */
export function settledPower(change: (content: Written) => void): PowerSizing & NetworkInput {
  const content = written();
  change(content);
  withoutBoard(content);
  const { sizing, power } = settledOnce(JSON.stringify(content), () => writtenJob(content));
  return { ...sizing, ...power };
}

/** The small shop's job, with changes made to its files, once its sizes stand. */
export function settledShop(...changes: readonly Change[]): Settled {
  return settledOnce(JSON.stringify(changes), () => jobOf(smallShop(...changes)));
}

/** The same with nothing sized or chosen yet: what is tried of it is worked out, not remembered. */
export function sizedAnew(sizing: PowerSizing): PowerSizing {
  const { job, devices, circuit } = sizing;
  return { ...sizing, sizer: conductorSizer(job, devices, circuit.roles), choose: fuseChooser(job) };
}
