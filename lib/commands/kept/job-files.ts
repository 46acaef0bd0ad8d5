import type { SourceFile } from '../../model/content/source-file.ts';
import type { Keep } from '../../model/keep.ts';
import { baseName, type ContentFiles } from '../../read/read-content.ts';
import { type JobFiles, vehicleStep } from './shop-steps.ts';

/**
 * Every file that a job is read from: its own, the shop's, the parts, and the vehicle that it names; all vehicles where
 * none has that name, since the message then says which there are.
 */
export function jobFilesIn(
  { shop, parts, vehicles }: Pick<ContentFiles, 'shop' | 'parts' | 'vehicles'>,
  job: SourceFile,
  { released, promised }: Pick<JobFiles, 'released' | 'promised'>,
  keep: Keep,
): JobFiles {
  const named = keep(vehicleStep, job);
  const own = vehicles.filter(({ path }) => baseName(path) === named);
  return { job, shop, parts, vehicles: own.length > 0 ? own : vehicles, released, promised };
}
