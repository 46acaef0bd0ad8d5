import type { Clock } from './timing.ts';

/** What a caller waits for (s). */
export const wallClock: Clock = () => performance.now() / 1000;

/** Time that the processor spent on this process (s): what else runs on the machine does not count. */
export const processClock: Clock = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
