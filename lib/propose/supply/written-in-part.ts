import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import { type Batteries, placeBeside } from './battery-places.ts';
import { postsOf } from './main-fuse.ts';
import type { SupplyNeed } from './supply-needs.ts';

/* What the job writes of a way from a battery takes nothing from the rest of it: that is proposed all the same. */

/** The terminals that a feed ends in. */
const fed: readonly TerminalRole[] = ['supply-positive', 'feed-in'];

/** Blocks that the job links to what they feed, and to nothing that feeds them, with what goes through them. */
export function unfedBlocks(draft: Draft, drawA: (device: DraftDevice) => number): readonly SupplyNeed[] {
  return draft.own.flatMap((device): SupplyNeed[] => {
    const [terminal] = terminalsWith(device, 'feed-in');
    if (device.spec.kind !== 'distribution' || terminal === undefined) return [];
    const behind = fedBy(draft, device);
    if (behind.length === 0 || !draft.isFree(device.id, terminal) || draft.isLeftOpen(device.id, terminal))
      return [];
    return [{ device, terminal, currentA: throughA(draft, device, drawA), ceilingA: null }];
  });
}

/** The devices whose supply is linked to the ways out of a block or a fuse. */
function fedBy(draft: Draft, block: DraftDevice): readonly DraftDevice[] {
  const links = terminalsWith(block, 'feed-out').flatMap((name) => draft.linksAt(block.id, name));
  return links.flatMap((id) => {
    const { from, to } = draft.links[id] ?? {};
    return [from, to].flatMap((text): DraftDevice[] => {
      const end = text === undefined ? null : linkEndOf(text);
      const device = end && draft.device(end.device);
      return device && device !== block && terminalsWith(device, ...fed).includes(end.terminal)
        ? [device]
        : [];
    });
  });
}

/** What goes through a block (A): what all behind it draws, each once. */
function throughA(draft: Draft, block: DraftDevice, drawA: (device: DraftDevice) => number): number {
  const behind = new Set([block]);
  for (const one of behind) for (const next of fedBy(draft, one)) behind.add(next);
  return [...behind].reduce((sum, one) => sum + drawA(one), 0);
}

/** The lead from the battery to each fuse beside it of which the job writes what goes on from it alone. */
export function linkTails(draft: Draft, { starter, second }: Batteries): void {
  for (const fuse of draft.own) {
    const [input] = terminalsWith(fuse, 'feed-in');
    if (fuse.spec.kind !== 'fuse-holder' || fuse.seat === null || input === undefined) continue;
    const isOpen = draft.isFree(fuse.id, input) && !draft.isLeftOpen(fuse.id, input);
    const battery = [starter, second].find((one) => one && placeBeside(draft, one) === fuse.seat);
    const plus = battery ? postsOf(battery).plus : null;
    const behind = terminalsWith(fuse, 'feed-out').flatMap((name) => draft.linksAt(fuse.id, name));
    if (!isOpen || !battery || plus === null || behind.length === 0) continue;
    // A holder that stands the other way round has its battery at its other end.
    if (draft.linksAt(battery.id, plus).some((id) => behind.includes(id))) continue;
    draft.addLink(
      draft.freeName('battery-tail', fuse.id),
      { from: `${battery.id}.${plus}`, to: `${fuse.id}.${input}` },
      {
        rule: 'supply',
        reason: `${fuse.id} stands beside ${battery.id}, and what goes on from it is written`,
        cp: true,
      },
      fuse.id,
    );
  }
}
