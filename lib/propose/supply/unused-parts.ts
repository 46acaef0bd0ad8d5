import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import { batteriesOf, placeBeside } from './battery-places.ts';
import { whyNoFeed } from './fused-ways.ts';
import type { SupplyNeed } from './supply-needs.ts';
import { isUntouched } from './turn-on.ts';

/**
 * Tells of every block, bar and fuse holder that the job has and that nothing was linked to: a part that is written is for
 * something. `needs` are the terminals that were to be fed.
 */
export function tellUnused(draft: Draft, needs: readonly SupplyNeed[]): void {
  for (const device of draft.own) {
    const { kind } = device.spec;
    if (kind !== 'distribution' && kind !== 'fuse-holder') continue;
    if (!isUntouched(draft, device) || isLeftOut(draft, device)) continue;
    draft.ask(
      ['devices', device.id],
      `nothing is linked to ${device.id}: ${reasonFor(draft, device, needs)}`,
      `write its links, take ${device.id} out, or write its terminals under left-open: with the reason`,
    );
  }
}

/** True for a part whose terminals the job leaves open by hand, all of them. */
function isLeftOut(draft: Draft, { id, facts }: DraftDevice): boolean {
  return Object.keys(facts.terminals).every((name) => draft.isLeftOpen(id, name));
}

function reasonFor(draft: Draft, device: DraftDevice, needs: readonly SupplyNeed[]): string {
  const { spec, seat, board } = device;
  const where = board ?? seat ?? 'nowhere';
  if (spec.kind === 'fuse-holder') return holderReason(draft, where);
  if (spec.kind === 'distribution' && Object.keys(spec['fused-ways']).length > 0)
    return whyNoFeed(draft, device, needs);
  return terminalsWith(device, 'ground-bar').length > 0
    ? `no ground lead that is proposed ends in ${where}: a bar takes those of the board that it stands on`
    : 'it has no fused ways, and what it joins is not told';
}

/** Main fuses stand beside the battery that they protect. */
function holderReason(draft: Draft, where: string): string {
  const { starter, second } = batteriesOf(draft);
  const seats = [starter, second].flatMap((battery) => (battery ? (placeBeside(draft, battery) ?? []) : []));
  return seats.includes(where)
    ? `the feeds that begin in ${where} have their fuses`
    : `the fuse of a battery stands beside it (${seats.join(', ')}), and this holder stands in ${where}`;
}
