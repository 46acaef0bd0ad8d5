import { printedNumber } from '../../../model/printed/index.ts';
import { kilograms } from '../../../model/printed/told.ts';
import type { Work } from '../work.ts';

/** How an enclosure at a place is held: a crash throws it forward. Empty for a place without one. */
export function boxText({ boxes }: Pick<Work, 'boxes'>, seat: string | null): string {
  const box = boxes.find((one) => one.seat === seat);
  if (!box) return '';
  const inside =
    box.leads.length === 0 ? '' : `; join the lead inside the box to its speaker: ${box.leads.join(', ')}`;
  if (box.massKg <= 0) return inside;
  const weighs = `with its speaker it weighs ${kilograms(box.massKg)}`;
  const forward = `${printedNumber('pull-newtons', box.forceN)} N forward`;
  if (box.isStrapped)
    return `${inside}; hold the box down by its straps, one at each end, hooked to sound metal and to nothing that holds a belt or an airbag, never to trim or carpet: ${weighs}, and straps and what they are hooked to are to hold ${forward}; no strap lies over an edge bare`;
  return `${inside}; bolt or strap the box to sound metal of the body, never to trim or carpet: ${weighs}, and its fixings are to hold ${forward}; first look and feel behind each hole: no tank, no line, no airbag, no wiring`;
}
