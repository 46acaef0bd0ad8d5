import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { drawJob } from '../draw/draw-job.ts';
import { type FontCut, fontFiles, textMetricsFrom } from '../draw/text-metrics.ts';
import type { DrawingsOf } from './shop-site.ts';

/** The drawings of plans, measured in the fonts that come with the site. Reads the fonts once. */
export async function openJobDrawings(): Promise<DrawingsOf> {
  const require = createRequire(import.meta.url);
  const read = (cut: FontCut): Promise<Uint8Array> => readFile(require.resolve(fontFiles[cut]));
  const metrics = textMetricsFrom({
    'sans-400': await read('sans-400'),
    'sans-600': await read('sans-600'),
    'condensed-400': await read('condensed-400'),
    'condensed-600': await read('condensed-600'),
  });
  return (plan) => drawJob(plan, metrics);
}
