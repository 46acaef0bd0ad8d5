import { type Device, type Job, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import type { PlanChannel } from '../../model/plan/index.ts';
import { carriedBy, type Told, toldBy } from '../../model/ports/carried-by-name.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { Carried, VehicleSide } from '../../model/vocabulary.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { factsOfOutput } from './signal-inputs.ts';
import { channelInputs } from './signal-path.ts';
import { sourcesOf } from './signal-sources.ts';

/** A side that the signal of a channel is written to be of, and what says so. */
export interface CarriedSide {
  readonly side: VehicleSide;
  /** An output of the source, or the conductor of a lead. */
  readonly by: string;
  /** The link of the conductor; the output's device where it is an output. */
  readonly at: { readonly link: string } | { readonly device: string };
}

/**
 * The sides that the signal of a channel is written to be of: by the outputs of the source that it begins at, where no
 * processor hides which they are, and by the conductor of the lead that ends at its input. An output without a side has
 * that of the conductor that leaves it.
 */
export function carriedSides(
  job: Job,
  devices: DevicesById,
  channel: Pick<PlanChannel, 'id' | 'amplifier'>,
): readonly CarriedSide[] {
  const inputs = channelInputs(job, channel);
  const { outputs, isTold } = sourcesOf(job, devices, inputs);
  return [
    ...(isTold ? outputs.flatMap((output) => sideOfOutput(job, devices, output) ?? []) : []),
    ...inputs.flatMap((input) => sideOfConductor(job, input) ?? []),
  ];
}

function sideOfOutput(job: Job, devices: DevicesById, output: LinkEnd): CarriedSide | null {
  const device = devices.get(output.device);
  const told = device ? toldAt(job, device, output.terminal) : null;
  const side =
    (device && factsOfOutput(job, device, stemName(output.terminal)).side) ??
    (told?.pair === 'bass' ? null : told?.side);
  if (side) return { side, by: terminalId(output), at: { device: output.device } };
  const carried = sideOfConductor(job, output);
  return carried && { ...carried, by: `${terminalId(output)} (${carried.by})` };
}

/** What an output of a source carries: as it is written, else by its name, else by its number among those of its form. */
export function carriedAt(job: Job, device: Device, terminal: string): Carried | null {
  const role = device.facts.terminals[terminal]?.role;
  const alike = role ? terminalsOf(device.facts.terminals, role) : [];
  const names = alike.map(stemName);
  const carried = carriedBy(names, (name) => factsOfOutput(job, device, name).carries);
  return carried.get(stemName(terminal)) ?? null;
}

/** What is told of an output of a source, as it is written or by its name; null where only its number tells. */
export function toldAt(job: Job, device: Device, terminal: string): Told | null {
  if (device.spec?.kind !== 'source-unit') return null;
  const name = stemName(terminal);
  return toldBy(factsOfOutput(job, device, name).carries ?? name);
}

/** An output of a source that plays for one side. */
export interface SidedOutput {
  readonly output: LinkEnd;
  readonly side: 'left' | 'right';
}

/**
 * The outputs of a source that a channel plays, where each is of one side: as written, else as what it carries. Null
 * where one is of both or of none, carries bass, or where nothing tells what is played.
 */
export function sidedOutputs(
  job: Job,
  devices: DevicesById,
  channel: Pick<PlanChannel, 'id' | 'amplifier'>,
): readonly SidedOutput[] | null {
  const { outputs, isTold } = sourcesOf(job, devices, channelInputs(job, channel));
  if (!isTold) return null;
  const sided = outputs.flatMap((output): SidedOutput[] => {
    const device = devices.get(output.device);
    if (device?.spec?.kind !== 'source-unit') return [];
    const side = sideAt(job, devices, device, output.terminal);
    const role = device.facts.terminals[output.terminal]?.role;
    const others = role ? terminalsOf(device.facts.terminals, role) : [];
    const opposite = side === 'left' ? 'right' : 'left';
    // An output without one of the other side beside it carries both.
    const isPair = others.some((other) => sideAt(job, devices, device, other) === opposite);
    return side !== null && isPair ? [{ output, side }] : [];
  });
  return sided.length === outputs.length ? sided : null;
}

/** The side that an output of a source plays for, as written, else by what it carries; null for bass and for the middle. */
function sideAt(
  job: Job,
  devices: DevicesById,
  device: Device,
  terminal: string,
): SidedOutput['side'] | null {
  const carried = carriedAt(job, device, terminal);
  const side =
    sideOfOutput(job, devices, { device: device.id, terminal })?.side ??
    (carried?.endsWith('-left') ? 'left' : carried ? 'right' : 'middle');
  return side === 'middle' || carried?.startsWith('bass') ? null : side;
}

function sideOfConductor(job: Job, end: LinkEnd): CarriedSide | null {
  const id = terminalId(end);
  const link = job.links.find(({ from, to }) =>
    [from, to].some((one) => [id, `${id}+`].includes(terminalId(one))),
  );
  const part = link?.cable ? job.parts[link.cable.part] : undefined;
  if (!link?.cable || part?.kind !== 'cable') return null;
  const side = part.conductors[link.cable.conductor]?.side;
  return side ? { side, by: `${link.cable.id}.${link.cable.conductor}`, at: { link: link.id } } : null;
}
