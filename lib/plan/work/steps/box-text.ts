import type { PlanWire } from '../../../model/plan/index.ts';
import { printedNumber } from '../../../model/printed/index.ts';
import { kilograms } from '../../../model/printed/told.ts';
import { labelsOf, type Work } from '../work.ts';

/** The wires that are joined inside a box, its leads and the jumpers at its speaker, with the speaker. */
function joinedInside({ made }: Pick<Work['boxes'][number], 'made'>, wires: readonly PlanWire[]) {
  const [first] = made;
  if (!first) return null;
  const links = made.map(({ link }) => link);
  const isJumper = ({ from, to }: PlanWire) => [from, to].every((end) => end.startsWith(`${first.speaker}.`));
  const own = wires.filter((wire) => links.includes(wire.id) || isJumper(wire));
  return own.length === 0 ? null : { speaker: first.speaker, wires: own };
}

/** What is joined inside boxes before their speakers go in, where the speakers are connected; empty where nothing is. */
export function insideBoxesText({ boxes }: Pick<Work, 'boxes'>, wires: readonly PlanWire[]): string {
  return boxes
    .flatMap((box) => joinedInside(box, wires) ?? [])
    .map(
      (one) =>
        `; inside the box join ${labelsOf(one.wires)}, then screw ${one.speaker} into its opening, sealed all round`,
    )
    .join('');
}

/** How an enclosure at a place is held: a crash throws it forward. Empty for a place without one. */
export function boxText({ boxes, plan }: Pick<Work, 'boxes' | 'plan'>, seat: string | null): string {
  const box = boxes.find((one) => one.seat === seat);
  if (!box) return '';
  const made = joinedInside(box, plan.wires);
  const later = made
    ? `; leave ${made.speaker} out of its opening until ${labelsOf(made.wires)} are joined inside`
    : '';
  const inside =
    box.leads.length === 0
      ? later
      : `; join the lead inside the box to its speaker: ${box.leads.join(', ')}${later}`;
  if (box.massKg <= 0) return inside;
  const weighs = `with its speaker it weighs ${kilograms(box.massKg)}`;
  const forward = `${printedNumber('pull-newtons', box.forceN)} N forward`;
  if (box.held === 'strap')
    return `${inside}; hold the box down by its straps, one at each end, hooked to sound metal and to nothing that holds a belt or an airbag, never to trim or carpet: ${weighs}, and straps and what they are hooked to are to hold ${forward}; no strap lies over an edge bare`;
  const by =
    box.held === 'bracket' ? 'bolt the box by its brackets, one at each end,' : 'bolt or strap the box';
  return `${inside}; ${by} to sound metal of the body, never to trim or carpet: ${weighs}, and its fixings are to hold ${forward}; first look and feel behind each hole: no tank, no line, no airbag, no wiring`;
}
