import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { keyOf } from './change-key.js';
import type { Change } from './chosen-changes.ts';

/** The file, a line for each change that was tried; of several about one change the last counts. */
const fileIn = (kept: string) => join(kept, 'outcomes.jsonl');

export function keepOutcomes(kept: string, changes: readonly Change[], told: ReadonlySet<string>): void {
  const lines = changes.map((change) => `${JSON.stringify([keyOf(change), told.has(change.id)])}\n`);
  appendFileSync(fileIn(kept), lines.join(''));
}

/** The changes that a test told: one failed, or never came to an end. */
export function toldIn(kept: string): (change: Change) => boolean {
  const file = fileIn(kept);
  const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
  const byKey = new Map<string, boolean>(lines.filter((line) => line).map((line) => JSON.parse(line)));
  return (change) => byKey.get(keyOf(change)) ?? false;
}
