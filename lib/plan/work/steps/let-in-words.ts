import { printedMade } from '../../../model/printed/holes.ts';
import { lengthText, type Work } from '../work.ts';

/** What speakers that are let into a panel ask for there, and what is looked at before one is; empty where none is. */
export function letInText(work: Work, own: readonly string[]): string {
  const letIn = work.letIn.filter(({ item }) => own.includes(item));
  if (letIn.length === 0) return '';
  const each = letIn.map(({ item, cutOutM, depthM }) => {
    const across =
      cutOutM === null
        ? 'an opening by the template of its maker'
        : `an opening ${lengthText(work, 'told', cutOutM)} (${printedMade(cutOutM)}) across`;
    return `${item} asks for ${across} and ${lengthText(work, 'room-asked', depthM)} free behind it`;
  });
  return `; ${each.join('; ')}: measure both before it goes in, and look behind each hole for its screws before it is drilled: no airbag, no window or its track, no lock rod, no wiring; a stop on the bit`;
}
