import { fileURLToPath } from 'node:url';
import { type Crew, openCrew } from '../../lib/commands/crew/crew.ts';

/** Where results are kept between files of tests. */
const keptIn = fileURLToPath(new URL('../../node_modules/.cache/rackleaf-kept', import.meta.url));

/**
 * Plans and draws for tests on their own thread, and keeps what was made by this state of the code between files of
 * tests. With `FRESH_PLANS=1` nothing is kept; a run that changes code in memory, such as one with mutants, needs that.
 */
export function testCrew(): Crew {
  return openCrew({ keptIn: process.env.FRESH_PLANS === '1' ? null : keptIn, threads: 0 });
}
