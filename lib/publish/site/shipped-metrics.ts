import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fontFiles, type TextMetrics, textMetricsFrom } from '../../draw/lettering/text-metrics.ts';
import { once } from '../../plan/once-each.ts';
import { storedWoff2 } from './stored-woff2.ts';

/** The metrics of the shipped type, from the font files among the installed packages: opened once in a process. */
export const shippedMetrics = once((): TextMetrics => {
  const require = createRequire(import.meta.url);
  const bytes = (file: string) => storedWoff2(readFileSync(require.resolve(file)));
  return textMetricsFrom({
    'sans-400': bytes(fontFiles['sans-400']),
    'sans-600': bytes(fontFiles['sans-600']),
    'condensed-400': bytes(fontFiles['condensed-400']),
    'condensed-600': bytes(fontFiles['condensed-600']),
  });
});
