import type { PlanControl } from '../../model/plan/index.ts';
import { deviceIdOf, deviceOf, deviceSpot, endsOf } from '../look-up.ts';
import type { Case, RuleOf, Verdict } from '../rule.ts';
import { listed } from '../words.ts';
import { terminalsWith } from './driven.ts';

/** A switch that chooses how a device turns on, whose automatic positions are told, as the plan has it. */
interface TurnOnSwitch {
  readonly control: PlanControl;
  readonly automatic: readonly string[];
  /** Its positions in which the device waits for its wire. */
  readonly wired: readonly string[];
  /** The turn-on inputs of its device. */
  readonly inputs: readonly string[];
  /** True where a wire reaches one of them. */
  readonly isWired: boolean;
}

/** When a switch stands wrong, and in which position. */
interface WrongState {
  readonly when: 'before first power' | 'after commissioning';
  readonly state: string;
  /** What is given under the one field, or the other. */
  readonly field: 'settings' | 'after-commissioning';
}

/** The switches for the turn-on of a device that has a turn-on input. */
export function switchesOf({ job, plan }: Case, id: string): readonly TurnOnSwitch[] {
  const inputs = terminalsWith(job, 'turn-on-in', 'job').filter((terminal) => deviceIdOf(terminal) === id);
  if (inputs.length === 0) return [];
  const isWired = plan.wires.some((wire) => endsOf(wire).some((end) => inputs.includes(end)));
  return plan.controls
    .filter(({ item }) => item === id)
    .flatMap((control): TurnOnSwitch[] => {
      const spec = deviceOf(job, id)?.facts.controls[control.control];
      const automatic = spec?.automatic ?? [];
      if (spec?.what !== 'turn-on-mode' || automatic.length === 0) return [];
      const wired = (spec.positions ?? []).filter((position) => !automatic.includes(position));
      return [{ control, automatic, wired, inputs, isWired }];
    });
}

/** Where a switch stands as its links can't have it; null where it stands right. */
export function stateOf({ control, automatic, isWired }: TurnOnSwitch): WrongState | null {
  const before: WrongState = { when: 'before first power', state: control.preset, field: 'settings' };
  const after: WrongState = {
    when: 'after commissioning',
    state: control.final.state ?? control.preset,
    field: 'after-commissioning',
  };
  const turnsOn = ({ state }: WrongState) => automatic.includes(state);
  // With a wire the position before first power is judged as that of every other control.
  if (isWired) return !turnsOn(before) && turnsOn(after) ? after : null;
  return [before, after].find((one) => !turnsOn(one)) ?? null;
}

/** True where a switch of a device without a wire at its turn-on input is judged by the rule below. */
export function isToldBySwitch(about: Case, item: string, control: string): boolean {
  return switchesOf(about, item).some((one) => one.control.control === control && !one.isWired);
}

function verdictOf(about: Case, one: TurnOnSwitch, wrong: WrongState): Verdict<'turn-on-switch'> {
  const { item, control, chosen, final } = one.control;
  const isGiven = (wrong.field === 'settings' ? chosen : final.chosen) === 'given';
  const lawful = one.isWired ? one.wired : one.automatic;
  const inputs = listed(one.inputs);
  const spot = deviceSpot(about.job, item, ...(isGiven ? [wrong.field, control] : []));
  const [only, ...others] = lawful;
  const field = isGiven ? wrong.field : 'settings';
  const write = `${field}: { ${control}: ${only ?? 'POSITION'} }`;
  const choice = others.length > 0 ? `, or the other that turns ${item} on: ${others.join(', ')}` : '';
  const also = isGiven && others.length === 0 ? ', or leave it out' : '';
  return {
    ...{ of: [`${item}.${control}`, item], value: wrong.state },
    ...(others.length === 0 && only !== undefined && { limit: only }),
    level: one.isWired ? 'caution' : 'stop',
    message: one.isWired
      ? `${control} on ${item} is to stand at ${wrong.state} ${wrong.when}, in which ${item} turns itself on: its wire at ${inputs} need not switch it`
      : `${control} on ${item} is to stand at ${wrong.state} ${wrong.when}, and no wire reaches ${inputs}: ${item} stays dead`,
    remedy: one.isWired
      ? `write ${write} at ${item}${also}; or take the wire away`
      : `write ${write} at ${item}${choice}${also}; or link ${inputs} to a turn-on output`,
    ...(isGiven && only !== undefined && others.length === 0 && { instead: { path: spot.path, text: only } }),
    ...spot,
  };
}

/** A switch for the turn-on that stands otherwise than its links ask: without a wire its device is dead. */
export const turnOnSwitchRule: RuleOf<'turn-on-switch'> = {
  id: 'turn-on-switch',
  judge: (about) =>
    about.job.devices
      .filter(({ origin }) => origin === 'job')
      .flatMap(({ id }) =>
        switchesOf(about, id).flatMap((one) => {
          const wrong = stateOf(one);
          return wrong ? [verdictOf(about, one, wrong)] : [];
        }),
      ),
};
