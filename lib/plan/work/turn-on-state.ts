import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import type { PlanFirstPower } from '../../model/plan/index.ts';

/** How a switch that chooses the way of turning on must stand, and why. */
export interface TurnOnState {
  readonly state: string;
  readonly why: string;
}

/** The turn-on inputs of a device that no link reaches; null where it has none, or where one is wired. */
export function openTurnOn({ links }: Pick<Job, 'links'>, device: Device): readonly string[] | null {
  const inputs = Object.entries(device.facts.terminals).flatMap(([terminal, { role }]) =>
    role === 'turn-on-in' ? [terminalId({ device: device.id, terminal })] : [],
  );
  const isWired = (input: string) =>
    links.some(({ from, to }) => [from, to].some((end) => terminalId(end) === input));
  return inputs.length === 0 || inputs.some(isWired) ? null : inputs;
}

/**
 * How a switch for the turn-on stands by what the links make, from the first power on: where no wire reaches the turn-on
 * input, in the position in which the device turns itself on, for in another it is dead. Null where the links do not
 * decide: a wire is there, or the part names no such position, or several.
 */
export function turnOnState(
  job: Pick<Job, 'links'>,
  device: Device,
  { what, automatic = [] }: ControlSpec,
): TurnOnState | null {
  if (what !== 'turn-on-mode') return null;
  const [state, ...others] = automatic;
  const open = openTurnOn(job, device);
  if (open === null || state === undefined || others.length > 0) return null;
  return { state, why: `${open.join(' and ')} has no wire: in another position it stays dead` };
}

type ByLead = NonNullable<PlanFirstPower['byLead']>[number];

/** How a device without a wire at its turn-on input comes up on the bench, where no source is that it could sense. */
export function turnOnByLead(job: Pick<Job, 'links'>, device: Device): ByLead | null {
  const [terminal] = openTurnOn(job, device) ?? [];
  if (terminal === undefined) return null;
  const own = { item: device.id, terminal };
  for (const [control, spec] of Object.entries(device.facts.controls)) {
    const asked = turnOnState(job, device, spec);
    if (!asked) continue;
    const wired = (spec.positions ?? [spec.safe]).filter((position) => position !== asked.state);
    return {
      ...{ ...own, control, automatic: asked.state },
      wired: wired.length === 1 ? (wired[0] ?? null) : null,
    };
  }
  return { ...own, control: null, wired: null, automatic: null };
}

/** The same in words: a lead brings it up, and what is changed for that is changed back. */
export function byLeadText({ item, terminal, control, wired, automatic }: ByLead): string {
  const lead = `a lead from ${terminal} to the positive of the bench supply, behind its limit`;
  if (control === null) return `${item} has no source to turn it on: ${lead}; take it off afterwards`;
  const position = wired ?? 'its position for a wired turn-on';
  return `${item} has no source to turn it on: ${control} to ${position} and ${lead}; afterwards take it off and put ${control} back to ${automatic ?? 'its preset'}`;
}
