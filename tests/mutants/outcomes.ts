import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { keyOf } from './change-key.js';
import type { Change } from './chosen-changes.ts';

/** The file, a line for each change that was tried; of several about one change the last counts. */
const fileIn = (folder: string) => join(folder, 'outcomes.jsonl');

export function keepOutcomes(folder: string, changes: readonly Change[], told: ReadonlySet<string>): void {
  const lines = changes.map((change) => `${JSON.stringify([keyOf(change), told.has(change.id)])}\n`);
  appendFileSync(fileIn(folder), lines.join(''));
}

function kept(folder: string): ReadonlyMap<string, boolean> {
  const file = fileIn(folder);
  const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
  return new Map<string, boolean>(lines.filter((line) => line).map((line) => JSON.parse(line)));
}

/** The changes that a test told: one failed, or never came to an end. */
export function toldIn(folder: string): (change: Change) => boolean {
  const byKey = kept(folder);
  return (change) => byKey.get(keyOf(change)) ?? false;
}

/** The changes that were tried at all. */
export function triedIn(folder: string): (change: Change) => boolean {
  const byKey = kept(folder);
  return (change) => byKey.has(keyOf(change));
}
