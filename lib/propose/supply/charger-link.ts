import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, terminalAt, terminalsWith } from '../draft/draft-device.ts';
import { linkFuses } from './link-fuse.ts';
import { currentA } from './supply-needs.ts';

/** Two batteries with a charger between them. */
interface Charged {
  readonly starter: DraftDevice;
  readonly second: DraftDevice;
}

/**
 * Links a charger that nothing is linked to: from the starter battery over a fuse beside it to the input, within what the
 * maker sets there; from the output to a fuse beside the second battery, which is a source too. Its ground follows as that
 * of every device. What tells it that the engine runs is asked for: only the vehicle's maker knows which feed is live then.
 */
export function linkCharger(draft: Draft, charger: DraftDevice, { starter, second }: Charged): void {
  const { spec, id } = charger;
  const [input] = terminalsWith(charger, 'supply-positive');
  const [output] = terminalsWith(charger, 'source-positive');
  if (spec.kind !== 'charger' || input === undefined || output === undefined) return;
  const duties = [
    {
      ...{ battery: starter, to: charger, port: terminalAt(charger, input), about: id },
      currentA: currentA(draft, charger, []),
      ceilingA: spec.input.fuse,
    },
    {
      ...{ battery: second, to: charger, port: terminalAt(charger, output), about: id },
      currentA: spec.output.current,
      ceilingA: spec.output.fuse,
    },
  ];
  const [front, rear] = linkFuses(draft, duties, charger);
  if (!front || !rear) return;
  const why = (reason: string): Why => ({ rule: 'supply', reason, cp: true });
  draft.addLink(
    draft.freeName(`feed-${id}`, starter.id),
    { from: `${front.device.id}.${front.terminal}`, to: `${id}.${input}` },
    why(`${id} is fed from ${starter.id}, its fuse beside the battery`),
    id,
  );
  draft.addLink(
    draft.freeName(`charge-${second.id}`, id),
    { from: `${id}.${output}`, to: `${rear.device.id}.${rear.terminal}` },
    why(`${id} charges ${second.id}: that is a source as well, its fuse beside it`),
    id,
  );
  const asked =
    spec['starts-by'] === 'charging-voltage' ? ['sense' as const] : ['turn-on-in' as const, 'sense' as const];
  for (const terminal of terminalsWith(charger, ...asked))
    if (draft.isFree(id, terminal) && !draft.isLeftOpen(id, terminal)) askForSignal(draft, charger, terminal);
}

function askForSignal(draft: Draft, charger: DraftDevice, terminal: string): void {
  const isTurnOn = terminalsWith(charger, 'turn-on-in').includes(terminal);
  draft.ask(
    ['devices', charger.id],
    isTurnOn
      ? `nothing tells ${charger.id} that the engine runs`
      : `what ${terminal} of ${charger.id} senses is not known`,
    isTurnOn
      ? `write a link to ${charger.id}.${terminal} from a switched and fused feed of the vehicle, or starts-by: charging-voltage in its part where it sees that itself`
      : `write its link as the maker of the charger says, or left-open: where it may be`,
  );
}
