import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { keyOf } from './change-key.js';
import type { Change } from './chosen-changes.ts';

/** What became of each change that was tried, kept from run to run in one file. */
export class Outcomes {
  readonly #file: string;
  readonly #byKey: Record<string, string>;

  constructor(file: string) {
    this.#file = file;
    this.#byKey = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
  }

  /** Takes over what became of those that were tried. */
  keep(results: readonly Change[], triedOnes: readonly Change[]): void {
    const keys = new Set(triedOnes.map(keyOf));
    for (const result of results) if (keys.has(keyOf(result))) this.#byKey[keyOf(result)] = result.status;
    writeFileSync(this.#file, JSON.stringify(this.#byKey, null, 1));
  }

  /** True where a test failed with the change, or never came to an end. */
  isTold(change: Change): boolean {
    return ['Killed', 'Timeout'].includes(this.#byKey[keyOf(change)] ?? '');
  }
}
