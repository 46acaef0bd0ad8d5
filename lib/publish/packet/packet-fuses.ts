import type { NumberedFuse } from '../../draw/packet/numbered-fuses.ts';
import { atMostText, formText, ratingText, shortName } from '../../draw/power/feed-words.ts';
import type { BuildPlan, PlanItem } from '../../model/plan/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { headed, joined, spelledWithin } from '../words/words.ts';

/** Where a thing is, as an owner looks for it: its place, else its board, else the part and side of the vehicle. */
export function placeOf(plan: Pick<BuildPlan, 'boards'>, item: PlanItem): string {
  const board = plan.boards.find(({ id }) => id === item.board)?.title;
  if (item.seatTitle !== null) return item.seatTitle;
  const part = zoneWords(item);
  return board === undefined ? headed(part) : `${board}, ${part}`;
}

/** Without a place of its own, the middle is where it is not known to be on one side. */
function zoneWords({ zone, side }: PlanItem): string {
  return side === 'middle' ? spelledWithin(zone) : `${spelledWithin(zone)}, ${side} side`;
}

/** Every fuse that was put in: what goes silent without it, what is put back, and where. */
export function fusesTable(plan: Pick<BuildPlan, 'boards'>, fuses: readonly NumberedFuse[]): Table | null {
  if (fuses.length === 0) return null;
  return tableOf('Each fuse: put back the rating that stands here, and no other', fuses, [
    { title: 'Fuse', kind: 'figure', leads: true, cell: ({ number }) => strong(String(number)) },
    { title: 'Rating', kind: 'figure', cell: ({ fuse }) => strong(ratingText(fuse).text) },
    { title: 'What it feeds', kind: 'words', cell: feedsText },
    { title: 'Kind of fuse', kind: 'words', cell: ({ fuse }) => formText(fuse) },
    {
      title: 'Where',
      kind: 'words',
      cell: ({ holder }) => `${shortName(holder)}: ${placeOf(plan, holder)}${slotText(holder)}`,
    },
  ]);
}

/** A tap holds the fuse of its slot as well: neither takes the place of the other. */
function slotText({ tap }: PlanItem): string {
  return tap ? "; beside it sits the fuse of the slot, which is the vehicle's own" : '';
}

/** A fuse on the card, as it is printed there. */
interface CardFuse {
  /** That of a fuse that the job adds; one that a device brings itself has none. */
  readonly number: number | null;
  readonly rating: string;
  readonly feeds: string;
  readonly where: string;
}

/** The same for a card in the glove box: number, rating, what it feeds and where it is; then those that devices bring themselves. */
export function cardTable(
  plan: Pick<BuildPlan, 'boards' | 'items'>,
  fuses: readonly NumberedFuse[],
): Table | null {
  if (fuses.length === 0) return null;
  const added = fuses.map((one): CardFuse => {
    const { number, fuse, holder } = one;
    return {
      ...{ number, rating: ratingText(fuse).text },
      ...{ feeds: feedsText(one), where: `${placeOf(plan, holder)}${slotText(holder)}` },
    };
  });
  return tableOf(
    'Fuses of the sound system',
    [...added, ...plan.items.flatMap((item) => ownFuse(plan, item))],
    [
      {
        title: 'Fuse',
        kind: 'figure',
        leads: true,
        cell: ({ number }) => (number === null ? { text: 'own' } : strong(String(number))),
      },
      { title: 'Rating', kind: 'figure', cell: ({ rating }) => strong(rating) },
      { title: 'Feeds', kind: 'words', cell: ({ feeds }) => feeds },
      { title: 'Where', kind: 'words', cell: ({ where }) => where },
    ],
  );
}

/** Fuses in a device: of several only their sum is known, and each has its rating on it. */
function ownFuse(plan: Pick<BuildPlan, 'boards'>, item: PlanItem): CardFuse[] {
  if (!item.ownFuses) return [];
  const { count, ratingA } = item.ownFuses;
  const sum = atMostText(ratingA);
  const rating = count > 1 ? 'as marked' : sum;
  const several = count > 1 ? `, ${count} fuses of ${sum} together` : '';
  const where = `${count > 0 ? 'In it' : 'In it or before it'}${several}: ${placeOf(plan, item)}`;
  return [{ number: null, rating, feeds: headed(shortName(item)), where }];
}

/** The devices behind a fuse; of one that feeds none, such as one between batteries, its holder's name says it. */
function feedsText({ feeds, holder }: NumberedFuse): string {
  return feeds.length === 0 ? shortName(holder) : headed(joined(feeds.map(shortName)));
}

/** The fuses nearest to a source that the job adds: with all of them out, nothing of the system is live. */
export function mainsOf(fuses: readonly NumberedFuse[]): NumberedFuse[] {
  return fuses.filter(({ fuse }) => fuse.source !== null);
}

/** `Fuse 1: 150 A, bolt-in. Beside the starter battery.` */
export function mainText(plan: Pick<BuildPlan, 'boards'>, { number, fuse, holder }: NumberedFuse): string {
  return `Fuse ${number}: ${ratingText(fuse).text}, ${formText(fuse)}. ${placeOf(plan, holder)}.`;
}
