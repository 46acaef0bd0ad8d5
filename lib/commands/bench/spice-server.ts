import { processClock, wallClock } from './clocks.ts';
import { openSpice } from './spice.ts';
import type { SpiceAnswer, SpiceRequest } from './spice-process.ts';
import { readingOf } from './timing.ts';

/* The process that `openSpiceProcess` starts: ngspice with a clock beside it. Each request has one answer. */
const spice = await openSpice();
process.on('message', (request: SpiceRequest) => void answer(request).then((said) => process.send?.(said)));
const opened: SpiceAnswer = { open: spice !== null };
process.send?.(opened);

async function answer({ network, startV, read }: SpiceRequest): Promise<SpiceAnswer> {
  const run = async () => (spice ? await spice(network, startV) : null);
  if (!read) return { voltages: await run() };
  const clock = read.clock === 'wall' ? wallClock : processClock;
  return { seconds: await readingOf(clock, run)(read.repeats) };
}
