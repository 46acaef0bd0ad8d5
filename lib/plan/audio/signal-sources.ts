import type { Job, LinkEnd } from '../../model/content/resolved-job.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { playedThrough } from './passed-on.ts';
import { feedOf, type PlayedInputs } from './signal-feed.ts';

/** Outputs of the source that may be heard from an input of an amplifier. */
export interface SignalSources {
  readonly outputs: readonly LinkEnd[];
  /** False where a processor stands between that does not say which of its inputs an output plays. */
  readonly isTold: boolean;
}

const nothing: SignalSources = { outputs: [], isTold: true };

/**
 * Where the signal at an input begins: the output that is linked to it, or, behind a processor, what feeds the inputs
 * that its `mix` names for that output; all that are linked where it names none. Behind a line output of an amplifier it
 * is what feeds the inputs that its part says it passes on. Several inputs are taken together.
 */
export function sourcesOf(
  job: Job,
  devices: DevicesById,
  inputs: readonly LinkEnd[],
  passed: readonly string[] = [],
): SignalSources {
  return inputs.reduce<SignalSources>((sum, input) => {
    const feeding = feedOf(job, input);
    if (feeding === null || passed.includes(feeding.device)) return sum;
    const device = devices.get(feeding.device);
    const played = device ? playedThrough(job, devices, device, feeding.terminal) : null;
    const found = played
      ? through(job, devices, played, [...passed, feeding.device])
      : { outputs: [feeding], isTold: true };
    return { outputs: [...sum.outputs, ...found.outputs], isTold: sum.isTold && found.isTold };
  }, nothing);
}

function through(
  job: Job,
  devices: DevicesById,
  { linked, isTold }: PlayedInputs,
  passed: readonly string[],
): SignalSources {
  const found = sourcesOf(job, devices, linked, passed);
  return { ...found, isTold: found.isTold && isTold };
}
