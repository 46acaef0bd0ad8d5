import { fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import type { Network } from '../../power/network/network-types.ts';
import { ownModule } from '../own-module.ts';
import type { Reading } from './timing.ts';

/** A network to solve, from the open-circuit voltage `startV`; with `read`, so many times, and only the time is asked for. */
export interface SpiceRequest {
  readonly network: Network;
  readonly startV: number;
  readonly read?: { readonly clock: SpiceClock; readonly repeats: number };
}
type SpiceClock = 'wall' | 'process';

/** Whether there is an engine, said once; the node voltages, null where it fails; or the seconds that one run takes. */
export type SpiceAnswer =
  | { readonly open: boolean }
  | { readonly voltages: ReadonlyMap<string, number> | null }
  | { readonly seconds: number };

/** ngspice for one network. */
export interface SpiceProcess {
  voltages(): Promise<ReadonlyMap<string, number> | null>;
  reading(clock: SpiceClock): Reading;
  close(): void;
}

/**
 * Opens ngspice in a process of its own; null where it is missing, as it is outside a development install. The memory
 * of the engine grows as it runs, after which every access to a typed array in the same process takes longer: beside
 * it this project's solver would be timed slower than it ever runs.
 */
export async function openSpiceProcess(network: Network, startV: number): Promise<SpiceProcess | null> {
  const server = fork(fileURLToPath(ownModule('./spice-server', import.meta.url)), {
    serialization: 'advanced',
  });
  const ended = once(server, 'exit').then((): SpiceAnswer => ({ open: false }));
  const answer = (): Promise<SpiceAnswer> =>
    Promise.race([once(server, 'message').then(([said]: SpiceAnswer[]) => said ?? { open: false }), ended]);
  const ask = (request: SpiceRequest): Promise<SpiceAnswer> => {
    server.send(request);
    return answer();
  };
  const opened = await answer();
  if (!('open' in opened) || !opened.open) {
    server.kill();
    return null;
  }
  return {
    voltages: async () => {
      const said = await ask({ network, startV });
      return 'voltages' in said ? said.voltages : null;
    },
    reading: (clock) => async (repeats) => {
      const said = await ask({ network, startV, read: { clock, repeats } });
      return 'seconds' in said ? said.seconds : Number.NaN;
    },
    close: () => server.kill(),
  };
}
