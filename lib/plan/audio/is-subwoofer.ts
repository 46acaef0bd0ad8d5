import type { Job } from '../../model/content/resolved-job.ts';

/** True for a speaker of the job or the vehicle that plays bass: its tone and its leads are those of bass. */
export function isSubwoofer(job: Job, id: string): boolean {
  const spec = job.devices.find((device) => device.id === id)?.spec;
  return spec?.kind === 'speaker' && spec.band === 'subwoofer';
}
