import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { keyOf } from './change-key.js';
import type { Change } from './chosen-changes.ts';

/** The file, a line for each change that was tried; of several about one change the last counts. */
export const outcomesFile = 'outcomes.jsonl';

/** The changes that a test told: one failed, or never came to an end. */
export function toldIn(kept: string): (change: Change) => boolean {
  const file = join(kept, outcomesFile);
  const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
  const byKey = new Map<string, string>(lines.filter((line) => line).map((line) => JSON.parse(line)));
  return (change) => ['Killed', 'Timeout'].includes(byKey.get(keyOf(change)) ?? '');
}
