import type { Device, Job, LinkEnd } from '../../model/content/resolved-job.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { type DevicesById, terminalRole } from '../wiring/conductor-role.ts';
import { feedOf } from './signal-path.ts';

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
  { id, facts, given }: Device,
  { terminal }: LinkEnd,
  passed: readonly string[],
): SignalSources {
  const names = given?.mix[terminal] ?? given?.mix[stemName(terminal)];
  const all = Object.keys(facts.terminals)
    .filter((name) =>
      ['signal-in', 'speaker-in-positive'].includes(
        terminalRole(devices, { device: id, terminal: name }) ?? '',
      ),
    )
    .map((name): LinkEnd => ({ device: id, terminal: name }));
  const played = names ? all.filter((end) => names.some((name) => isNamed(end, name))) : all;
  const linked = played.filter((end) => feedOf(job, end) !== null);
  const found = sourcesOf(job, devices, linked, passed);
  return { ...found, isTold: found.isTold && (names !== undefined || linked.length < 2) };
}

/** True for a terminal, or for the positive of a pair, by its name. */
function isNamed(end: LinkEnd, name: string): boolean {
  return end.terminal === name || stemName(end.terminal) === name;
}
