import type { Device } from '../model/content/resolved-job.ts';
import type { Fault } from '../model/fault.ts';
import type { FindingId, LevelOf } from '../model/findings/index.ts';
import type { Whereabouts } from '../model/remark.ts';
import type { PlanBook } from './plan-book.ts';

/** The findings that may stop a job. */
type StoppingId = { [Id in FindingId]: 'stop' extends LevelOf<Id> ? Id : never }[FindingId];

/** An audio fault stops the job, where its device was written: power, gain and preset of the channel are not known. */
export function remarkFault(
  fault: Fault<StoppingId>,
  device: Device,
  book: PlanBook,
  where: Whereabouts = { path: device.path, file: device.origin },
): void {
  const { fault: rule, of, message, remedy } = fault;
  book.remark({ rule, level: 'stop', of, message, remedy }, where);
}
