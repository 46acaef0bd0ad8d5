import type { Device, Job, LinkEnd } from '../../model/content/resolved-job.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { feedOf, playedInputs } from './signal-feed.ts';

/** Outputs of the source that may be heard from an input of an amplifier. */
export interface SignalSources {
  readonly outputs: readonly LinkEnd[];
  /** False where a processor stands between that does not say which of its inputs an output plays. */
  readonly isTold: boolean;
}

const nothing: SignalSources = { outputs: [], isTold: true };

/**
 * Where the signal at an input begins: the output that is linked to it, or, behind a processor, what feeds the inputs
 * that its `mix` names for that output; all that are linked where it names none. Several inputs are taken together.
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
    const found =
      device?.spec?.kind === 'processor'
        ? throughProcessor(job, devices, device, feeding, [...passed, device.id])
        : { outputs: [feeding], isTold: true };
    return { outputs: [...sum.outputs, ...found.outputs], isTold: sum.isTold && found.isTold };
  }, nothing);
}

function throughProcessor(
  job: Job,
  devices: DevicesById,
  processor: Device,
  { terminal }: LinkEnd,
  passed: readonly string[],
): SignalSources {
  const { linked, isTold } = playedInputs(job, devices, processor, terminal);
  const found = sourcesOf(job, devices, linked, passed);
  return { ...found, isTold: found.isTold && isTold };
}
