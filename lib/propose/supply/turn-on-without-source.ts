import { turnOnDrawOf } from '../../model/kinds/fields/turn-on-draw.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalAt, terminalsWith } from '../draft/draft-device.ts';
import type { SignalChain } from '../sound/signal-chain.ts';

/** A turn-on input that nothing drives yet. */
export interface Waiting {
  readonly device: DraftDevice;
  readonly terminal: string;
}

/** Something that turns others on: an output, and what it may give. */
export interface TurnOnOutput {
  readonly device: DraftDevice;
  readonly terminal: string;
}

/**
 * Leaves open the turn-on inputs of what turns itself on by what its part tells: by the inputs that are linked, or in a
 * position of its switch. Gives the inputs that still wait.
 */
export function leaveToThemselves(draft: Draft, waiting: readonly Waiting[]): readonly Waiting[] {
  return waiting.filter(({ device, terminal }) => {
    const by = turnsItselfOnBy(draft, device);
    if (by === null) return true;
    draft.leaveOpen(device.id, terminal, {
      rule: 'turn-on',
      reason: `nothing before it has a turn-on output, and ${device.id} turns itself on by ${by}`,
      cp: true,
    });
    return false;
  });
}

function turnsItselfOnBy(draft: Draft, device: DraftDevice): string | null {
  const [control] = Object.entries(device.facts.controls).flatMap(([name, { what, automatic = [] }]) =>
    what === 'turn-on-mode' && automatic.length === 1 ? [`${name} at ${automatic[0]}`] : [],
  );
  if (control !== undefined) return control;
  // A switch whose positions nobody tells may stand so that it senses nothing.
  if (Object.values(device.facts.controls).some(({ what }) => what === 'turn-on-mode')) return null;
  const sensing = Object.entries(device.facts.terminals).some(
    ([name, spec]) => spec['speaker-level']?.senses === true && !draft.isFree(device.id, name),
  );
  return sensing ? 'its speaker-level inputs' : null;
}

/** A turn-on output of an amplifier or processor that gives enough for what waits; null where there is none. */
export function outputWithin(draft: Draft, waiting: readonly Waiting[]): TurnOnOutput | null {
  const ids = waiting.map(({ device: { id } }) => id);
  const sumA = waiting.reduce(
    (sum, { device }) => sum + (turnOnDrawOf(device.spec, draft.around.rules)?.currentA ?? 0),
    0,
  );
  const found = outputsOfJob(draft).find(({ device, terminal }) => {
    const limitA = terminalAt(device, terminal)?.current;
    return limitA !== undefined && sumA <= limitA * (1 + 1e-9) && !ids.includes(device.id);
  });
  return found ?? null;
}

function outputsOfJob(draft: Draft): readonly TurnOnOutput[] {
  return draft.own
    .filter(({ spec }) => spec.kind === 'amplifier' || spec.kind === 'processor')
    .flatMap((device) =>
      terminalsWith(device, 'turn-on-out')
        .filter((terminal) => draft.isFree(device.id, terminal) && !draft.isLeftOpen(device.id, terminal))
        .map((terminal) => ({ device, terminal })),
    );
}

/** Asks for what switches a device on, with the lines of each way. */
export function askForTurnOn(draft: Draft, { source }: SignalChain, { device, terminal }: Waiting): void {
  const { id } = device;
  const input = `${id}.${terminal}`;
  const link = (from: string) => `links: { turn-on-${id}: { from: ${from}, to: ${input} } }`;
  const [output] = outputsOfJob(draft).filter((one) => one.device.id !== id);
  const from = output
    ? `the turn-on output of ${output.device.id}, where it gives enough: ${link(`${output.device.id}.${output.terminal}`)}`
    : `a turn-on output of an amplifier or processor: ${link('AMPLIFIER.REM-OUT')}`;
  const itself =
    device.spec.kind === 'fan'
      ? []
      : [
          `where its own inputs or a switch turn it on, tell it in its part (speaker-level: { senses: true } at its inputs, or automatic: [POSITION] at the switch), and write left-open: { ${input}: turns itself on }`,
        ];
  draft.ask(
    ['devices', id],
    source
      ? `nothing switches ${id} on: ${source.id} has no turn-on output`
      : `nothing switches ${id} on: the job and the vehicle have no source unit`,
    [
      ...itself,
      `write ${from}`,
      `or a feed of the vehicle that goes off with the ignition, through a fuse of its own: ${link('HOLDER.OUT')}`,
    ].join('; '),
  );
}
