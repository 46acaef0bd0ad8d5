import type { Cell, Row } from '../ask/rows.ts';
import type { Named } from '../yaml-text.ts';

/** What each line output passes on: the inputs of all rows that name it, one for each in their order. */
export function passedOn(rows: readonly Row[]): Named {
  const told = new Map<string, { of: Record<string, Cell>; tap: Cell }>();
  for (const { cells } of rows) {
    const inputs = String(cells.inputs).split(/\s+/);
    for (const [at, output] of String(cells.outputs).split(/\s+/).entries()) {
      const input = inputs[at];
      if (input === undefined || cells.share === undefined || cells.tap === undefined) continue;
      const before = told.get(output);
      told.set(output, { of: { ...before?.of, [input]: cells.share }, tap: cells.tap });
    }
  }
  return Object.fromEntries(told);
}

/** What is wrong with a row of line outputs: each passes on one input. */
export function passedFault({ outputs, inputs }: Row['cells']): string | null {
  const counts = [outputs, inputs].map((names) => String(names).split(/\s+/).length);
  return counts[0] === counts[1]
    ? null
    : `names ${counts[0]} outputs and ${counts[1]} inputs: write one input for each output, in the same order`;
}
