import { z } from 'zod';
import { fileId } from '../fields.ts';
import { partSchema } from '../kinds/index.ts';
import { formatVersion } from './shop.ts';

/** One file of `content/parts/`: parts by id. A file holds as many as the shop likes to keep together. */
export const partsFileSchema = z.strictObject({
  rackleaf: formatVersion,
  parts: z.record(fileId, partSchema),
});
