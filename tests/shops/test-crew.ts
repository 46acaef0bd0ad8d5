import { fileURLToPath } from 'node:url';
import { type Crew, openCrew } from '../../lib/commands/crew/crew.ts';

const folder = fileURLToPath(new URL('../../node_modules/.cache/rackleaf-kept', import.meta.url));

/**
 * Where results are kept between files of tests; null where none may be: with `FRESH_PLANS=1`, which a run that changes
 * code in memory, such as one with mutants, needs.
 */
export const keptBetweenTests = process.env.FRESH_PLANS === '1' ? null : folder;

/** Plans and draws for tests on their own thread, and keeps what was made by this state of the code between files of tests. */
export function testCrew(): Crew {
  return openCrew({ keptIn: keptBetweenTests, threads: 0 });
}
