import { actsOn } from '../../../audio/filter/filter-offers.ts';
import { type Device, type Job, type LinkEnd, terminalId } from '../../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../../model/kinds/fields/control-spec.ts';
import type { PlanChannel } from '../../../model/plan/index.ts';
import { stemName } from '../../../model/ports/pair-name.ts';
import { type DevicesById, terminalRole } from '../../wiring/conductor-role.ts';
import { playedThrough } from '../passed-on.ts';
import { feedOf } from '../signal-feed.ts';
import { factsOfOutput } from '../signal-inputs.ts';
import { channelInputs, channelNames } from '../signal-path.ts';
import { stateAfterwards } from './control-state.ts';

/** A switch that turns the whole signal of a path over, or would in its other position. */
export interface PhaseSwitch {
  readonly device: Device;
  readonly control: string;
  readonly isTurned: boolean;
  /** The position in which it would turn the signal the other way round; null where its part names none. */
  readonly other: string | null;
}

/** What may turn the signal of a path over. */
interface Turning {
  /** What does: switches, outputs and leads that are the wrong way round, by name. Two of them cancel. */
  readonly by: readonly string[];
  readonly switches: readonly PhaseSwitch[];
}

const nothing: Turning = { by: [], switches: [] };

/** What turns the signal of a channel over from the source on, as it is set after commissioning, and what might. */
export function turningBefore(
  job: Job,
  devices: DevicesById,
  channel: Pick<PlanChannel, 'id' | 'amplifier'>,
): Turning {
  const device = devices.get(channel.amplifier);
  if (!device) return nothing;
  return joined(
    commonTo(job, devices, channelInputs(job, channel), [channel.amplifier]),
    switchesOn(device, channelNames(channel)),
  );
}

/**
 * What turns over the sum of what arrives at some inputs: that of the first where all arrive the same way round; where
 * some don't, what is left of the sum has no polarity that is known. A switch before one of several turns no sum over.
 */
function commonTo(
  job: Job,
  devices: DevicesById,
  inputs: readonly LinkEnd[],
  passed: readonly string[],
): Turning {
  const fed = inputs.filter((input) => feedOf(job, input) !== null);
  const [first, ...others] = fed.map((input) => turningAt(job, devices, input, passed));
  if (!first) return nothing;
  if (others.length === 0) return first;
  return others.every(({ by }) => isOdd(by) === isOdd(first.by)) ? { ...first, switches: [] } : nothing;
}

/** True for what turns a signal over in the end. */
export function isOdd(by: readonly string[]): boolean {
  return by.length % 2 === 1;
}

function turningAt(job: Job, devices: DevicesById, input: LinkEnd, passed: readonly string[]): Turning {
  const output = feedOf(job, input);
  const device = output && devices.get(output.device);
  if (!output || !device || passed.includes(device.id)) return nothing;
  const played = playedThrough(job, devices, device, output.terminal);
  if (!played && device.spec?.kind === 'amplifier') return nothing;
  const before = played
    ? commonTo(job, devices, played.linked, [...passed, device.id])
    : { by: reversedAt(job, devices, device, output), switches: [] };
  return joined(before, switchesOn(device, [stemName(output.terminal)]));
}

function joined({ by, switches }: Turning, own: readonly PhaseSwitch[]): Turning {
  const turned = own.filter(({ isTurned }) => isTurned);
  return {
    by: [...by, ...turned.map(({ device, control }) => `${device.id}.${control}`)],
    switches: [...own, ...switches],
  };
}

/** An output whose facts say that it is turned over; its negative where a lead takes that for the positive. */
function reversedAt(job: Job, devices: DevicesById, source: Device, output: LinkEnd): readonly string[] {
  const name = stemName(output.terminal);
  const isReversed = factsOfOutput(job, source, name).polarity === 'reversed';
  const isCrossed = terminalRole(devices, output) === 'speaker-out-negative';
  return [
    ...(isReversed ? [terminalId({ ...output, terminal: name })] : []),
    ...(isCrossed ? [terminalId(output)] : []),
  ];
}

function switchesOn(device: Device, names: readonly string[]): readonly PhaseSwitch[] {
  return Object.entries(device.facts.controls).flatMap(([control, spec]): PhaseSwitch[] => {
    if (spec.what !== 'phase' || !actsOn(device, spec).some((one) => names.includes(one))) return [];
    const reversing = reversingPositions(spec);
    const isTurned = reversing.includes(stateAfterwards(device, control, spec));
    const straight = (spec.positions ?? []).filter((one) => !reversing.includes(one));
    const other = reversing.length === 0 ? undefined : isTurned ? straight[0] : reversing[0];
    return [{ device, control, isTurned, other: other ?? null }];
  });
}

/** The positions that turn a signal over: those that the part names, else 180 degrees, else of two the one that is not safe. */
function reversingPositions({ positions = [], safe, reverses }: ControlSpec): readonly string[] {
  if (reverses) return reverses;
  const half = positions.filter((one) => /^180\b/.test(one));
  if (half.length > 0) return half;
  return positions.length === 2 ? positions.filter((one) => one !== safe) : [];
}
