import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fontFiles, textMetricsFrom } from '../../../lib/draw/lettering/text-metrics.ts';

const require = createRequire(import.meta.url);

/** The bytes of one shipped font file. */
export function fontBytes(file: string): Uint8Array {
  return readFileSync(require.resolve(file));
}

/** Metrics of the type that is shipped. */
export const shippedMetrics = textMetricsFrom({
  'sans-400': fontBytes(fontFiles['sans-400']),
  'sans-600': fontBytes(fontFiles['sans-600']),
  'condensed-400': fontBytes(fontFiles['condensed-400']),
  'condensed-600': fontBytes(fontFiles['condensed-600']),
});
