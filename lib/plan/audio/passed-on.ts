import type { Device, Job, LinkEnd } from '../../model/content/resolved-job.ts';
import type { PassedOn } from '../../model/kinds/amplifier.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { feedOf, type PlayedInputs, playedInputs } from './signal-feed.ts';

/** What a line output of an amplifier gives of what is linked to its inputs. */
export interface PassedInputs {
  readonly tap: PassedOn['tap'];
  readonly inputs: readonly { readonly end: LinkEnd; readonly share: number }[];
}

/** The linked inputs that a line output of an amplifier passes on, by its part; null where the part tells nothing of it. */
export function passedInputs(job: Job, { id, spec, facts }: Device, output: string): PassedInputs | null {
  const passed = spec?.kind === 'amplifier' ? spec.passes[output] : undefined;
  if (!passed) return null;
  const inputs = Object.entries(passed.of).map(([name, share]) => ({
    end: { device: id, terminal: facts.terminals[name] ? name : `${name}+` },
    share,
  }));
  return { tap: passed.tap, inputs: inputs.filter(({ end }) => feedOf(job, end) !== null) };
}

/**
 * The inputs that an output plays of what passes through its device: of a processor by its `mix:`, of an amplifier by
 * what its part says of the line output. Null where the signal begins at the device, or nothing tells what passes.
 */
export function playedThrough(
  job: Job,
  devices: DevicesById,
  device: Device,
  output: string,
): PlayedInputs | null {
  if (device.spec?.kind === 'processor') return playedInputs(job, devices, device, output);
  const passed = passedInputs(job, device, output);
  if (!passed || passed.inputs.length === 0) return null;
  return { linked: passed.inputs.map(({ end }) => end), isTold: passed.inputs.length === 1 };
}

/**
 * The outputs at which something is set for an input: what is linked to it, and before an amplifier that passes its
 * inputs on the outputs that feed these.
 */
export function setBefore(
  job: Job,
  devices: DevicesById,
  input: LinkEnd,
  through: readonly string[] = [],
): readonly LinkEnd[] {
  const feeding = feedOf(job, input);
  const device = feeding && devices.get(feeding.device);
  if (!feeding || through.includes(feeding.device)) return [];
  const passed = device ? passedInputs(job, device, feeding.terminal) : null;
  if (!passed || passed.inputs.length === 0) return [feeding];
  return passed.inputs.flatMap(({ end }) => setBefore(job, devices, end, [...through, feeding.device]));
}
