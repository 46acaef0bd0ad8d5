import type { Change } from '../../like/change.ts';
import { mostTold, type NearestBoard, nearestBoards } from '../../like/rank-boards.ts';
import { beginCommand, changeWork, standsText, workText } from '../../like/told.ts';
import type { Wish } from '../../like/wish.ts';
import { type LengthWriter, worded } from '../../model/phrase.ts';
import { printed } from '../../model/printed/index.ts';
import type { SiteContext } from '../page/page.ts';
import { type Fact, fact, type Table, tableOf } from '../sheets/table.ts';
import { wayUp } from '../site/addresses.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { headed } from '../words/words.ts';
import { writerFor } from '../words/written.ts';
import { outlineOf, sizeOf } from './facets.ts';
import { factsOf } from './job-facts.ts';
import { type JobHit, jobHits } from './job-hits.ts';
import { boardsOfOthers } from './past-boards.ts';
import { thumbnailOf } from './thumbnail-file.ts';

/** A past board among the nearest, as a page shows it. */
export interface BoardHit {
  readonly rank: number;
  readonly job: JobHit;
  /** The board of the job, by its title. */
  readonly board: string;
  /** What it asks for in all, what it is like, and what of it stays. */
  readonly facts: readonly Fact[];
  /** What would have to change, in the order of labour; null where nothing has to. */
  readonly changes: Table | null;
  /** What to type to begin from it; empty where no work makes it serve. */
  readonly command: string;
}

/** Where a wish is shown, and for which job; null for none. */
export interface WishPlace {
  readonly address: string;
  readonly job: string | null;
}

/** The past boards that ask for the least work to serve a wish, the nearest first. */
export function boardHits(context: SiteContext, { address, job }: WishPlace, wish: Wish): BoardHit[] {
  const past = boardsOfOthers(context.site, job);
  const jobs = new Map(context.site.jobs.map((one) => [one.plan.job.id, one]));
  return nearestBoards(wish, past, mostTold, context.keep).flatMap((found, at) => {
    const own = jobs.get(found.board.job);
    return own ? hitOf(context, { address, wish, own, found, rank: at + 1 }) : [];
  });
}

interface Found {
  readonly address: string;
  readonly wish: Wish;
  /** The job that the board is of. */
  readonly own: PublishedJob;
  readonly found: NearestBoard;
  readonly rank: number;
}

function hitOf({ site, audience }: SiteContext, { address, wish, own, found, rank }: Found): BoardHit[] {
  const [job] = jobHits(address, [own], audience);
  if (!job) return [];
  const { board, changes, blocked } = found;
  const { boards = [] } = factsOf(own.plan, audience);
  const shown = boards.find(({ id }) => id === board.board);
  const thumbnail = thumbnailOf(own.plan, board.board);
  const writer = writerFor(site.shop);
  const write: LengthWriter = (kind, lengthM) => writer.length(kind, lengthM).text;
  const outline = shown ? [outlineOf(shown), sizeOf(shown, site.shop.units)] : [];
  return [
    {
      rank,
      job: {
        ...job,
        picture: thumbnail && { src: `${wayUp(address)}${thumbnail.path}`, title: thumbnail.title },
        spaces: shown?.spaceTitle ?? '',
      },
      board: shown?.title ?? board.board,
      facts: [
        fact('Work', headed(workText(found))),
        fact('Outline', outline.filter((text) => text !== undefined).join(', ')),
        fact('In this space', headed(standsText(found, write))),
        fact('Alike', alikeText(found, wish)),
        fact('Current at rated power', currentText(found)),
      ],
      changes: changes.length === 0 ? null : changesTable(changes, write),
      command: blocked ? '' : beginCommand(board.job, { vehicle: wish.space.vehicle, space: wish.space.id }),
    },
  ];
}

/** What of a past board is as it is wanted. */
function alikeText({ board, parts: { common, kept } }: NearestBoard, { space, parts }: Wish): string {
  const isSameVehicle = board.vehicle === space.vehicle;
  const made =
    isSameVehicle && board.space === space.id
      ? ['made for this space']
      : isSameVehicle
        ? ['made for another space of this vehicle']
        : [];
  const stays = parts === null ? ['every part stays'] : partsAlike(common, kept);
  return headed([...stays, ...made].join('; '));
}

function partsAlike(common: readonly string[], kept: readonly string[]): string[] {
  const there = common.length === 0 ? 'no part in common' : `as wanted: ${common.join(', ')}`;
  return kept.length === 0 ? [there] : [there, `may stay: ${kept.join(', ')}`];
}

function currentText({ supply: { hadA, needsA } }: NearestBoard): string {
  return `${printed('current-carried', hadA)} on it, ${printed('current-carried', needsA)} wanted`;
}

function changesTable(changes: readonly Change[], write: LengthWriter): Table {
  return tableOf('What would have to change', changes, [
    { title: 'Change', kind: 'words', cell: ({ told }) => worded(told, write) },
    { title: 'Work', kind: 'figure', cell: changeWork },
  ]);
}
