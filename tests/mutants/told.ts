import { existsSync, readFileSync } from 'node:fs';

/** The variable that names the file with what the tests are to try. */
export const tryingVariable = 'MUTANTS_TRYING';

/** A line of what a run of tests over changed code tells, as soon as it is so. */
export type Told =
  | { readonly trying: string; readonly limitMs: number }
  | { readonly told: string; readonly by: string }
  /** A file of tests that has been run. */
  | { readonly done: string }
  /** Changes that were run through while no test ran, and that no test has told. */
  | { readonly between: readonly string[] };

export const toldLine = (line: Told): string => `${JSON.stringify(line)}\n`;

export function readTold(file: string): readonly Told[] {
  const lines = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
  // The last one is cut short where the process was ended as it wrote.
  return lines.slice(0, -1).map((line): Told => JSON.parse(line));
}
