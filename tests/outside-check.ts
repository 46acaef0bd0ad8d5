import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, expect } from 'vitest';
import { greatestDifferences } from '../lib/model/computations/greatest-differences.ts';
import { type OutsideCheckId, outsideChecks } from '../lib/model/computations/outside-checks.ts';
import { isLongRun } from './long-run.ts';

const kept = fileURLToPath(new URL('../lib/model/computations/greatest-differences.ts', import.meta.url));

/** What one check outside the project finds: the greatest of the differences that it is told of. */
export interface OutsideFinder {
  /** Notes how far a figure of ours is from the outside one, in the unit of the check; gives ours back. */
  readonly differs: (ours: number, outside: number) => number;
}

/**
 * Keeps the greatest difference that a check finds in a file of tests, and holds it against what the site tells: a check
 * may not come to find more. Several files may take part in one check. Call it at the top of a file or in a `describe`.
 * `RENEW_CHECKS=1` writes down what was found where that is more; to lower a figure, write `Number.NaN` there first.
 */
export function outsideCheck(id: OutsideCheckId): OutsideFinder {
  const isRelative = outsideChecks[id].unit === '%';
  let greatest = 0;
  let hasSeen = false;
  afterAll(() => {
    // The long run tries more cases than what is told was found in.
    // What changed code finds says nothing of ours.
    if (!hasSeen || isLongRun || process.env.MUTANTS_TRYING !== undefined) return;
    if (process.env.RENEW_CHECKS) renew(id, roundedUp(greatest));
    else
      expect(greatest, `${id}: more than the site tells`).toBeLessThanOrEqual(
        greatestDifferences[id] * (1 + computersOwn),
      );
  });
  return {
    differs: (ours, outside) => {
      const off = Math.abs(ours - outside);
      hasSeen = true;
      greatest = Math.max(greatest, isRelative ? (100 * off) / Math.abs(outside || 1) : off);
      return ours;
    },
  };
}

/** The rounding of the computer itself, as a share: it differs from one to another. */
const computersOwn = 1e-9;

/** Up to two digits that count. What is under it is no difference. */
function roundedUp(value: number): number {
  if (value === 0) return 0;
  if (value < computersOwn) return computersOwn;
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.ceil((value / step) * (1 - computersOwn)) * step).toPrecision(2));
}

function renew(id: OutsideCheckId, found: number): void {
  const source = readFileSync(kept, 'utf8');
  const line = new RegExp(`^(  '?${id}'?: )(.*),$`, 'm').exec(source);
  if (!line) throw new Error(`${kept} has no line for ${id}`);
  if (found <= Number(line[2])) return;
  writeFileSync(kept, source.replace(line[0], `${line[1]}${found},`));
}
