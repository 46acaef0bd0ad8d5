import type { AudioFault } from '../audio/fault.ts';
import type { Device } from '../model/resolved-job.ts';
import type { PlanBook } from './plan-book.ts';

/** An audio fault stops the job, where its device was written: power, gain and preset of the channel are not known. */
export function remarkFault(fault: AudioFault, device: Device, book: PlanBook): void {
  const { fault: rule, subjects, message, remedy } = fault;
  book.remark(
    { rule, level: 'stop', of: subjects, message, remedy, source: "Kirchhoff's laws; the parts' data" },
    { path: device.path, file: device.origin },
  );
}
