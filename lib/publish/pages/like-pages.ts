import { wishFor, wishOfBoard } from '../../like/shop-wishes.ts';
import type { Wish } from '../../like/wish.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { type BoardHit, boardHits } from '../reference/board-hits.ts';
import { boardsOf, likeAddress, ranksBoards } from '../reference/past-boards.ts';
import { type Fact, fact } from '../sheets/table.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { inOrder } from '../site/job-order.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { vehiclesInOrder } from '../site/vehicle-order.ts';
import { writerFor } from '../words/written.ts';

/** The index of past boards: what they are ranked for. */
export interface LikeIndexBody {
  readonly vehicles: readonly { readonly title: string; readonly spaces: readonly Link[] }[];
  readonly jobs: readonly (Link & { readonly id: string })[];
}

/** The nearest past boards of a space, or of the boards of a job. */
export interface LikeBody {
  /** The vehicle or the job that they are ranked for. */
  readonly of: Link;
  readonly wishes: readonly RankedWish[];
  /** What to type to rank them anew. */
  readonly command: string;
}

/** What past boards are held against, with those that are nearest. */
interface RankedWish {
  /** Its part of an anchor. */
  readonly id: string;
  readonly title: string;
  readonly facts: readonly Fact[];
  readonly hits: readonly BoardHit[];
  /** Why there are none; empty where there are. */
  readonly silence: string;
}

const title = 'Past boards that would fit';

/** The index of past boards, a page for each space of a vehicle, and one for each job that has a board. */
export function likePages(context: SiteContext): Page[] {
  if (!ranksBoards(context)) return [];
  const { site } = context;
  const vehicles = vehiclesInOrder(site);
  const jobs = inOrder(site.jobs).flatMap((job) => {
    const address = likeAddress(context, job.plan);
    return address === null ? [] : [{ job, address }];
  });
  return [
    indexPage(context, vehicles, jobs),
    ...vehicles.flatMap((vehicle) =>
      Object.keys(vehicle.spaces).map((id) => spacePage(context, vehicle, id)),
    ),
    ...jobs.map((one) => jobPage(context, one)),
  ];
}

interface RankedJob {
  readonly job: PublishedJob;
  readonly address: string;
}

function indexPage(context: SiteContext, vehicles: readonly Vehicle[], jobs: readonly RankedJob[]): Page {
  const address = addresses.like;
  return {
    address,
    template: 'like/index.njk',
    model: () => {
      const body: LikeIndexBody = {
        vehicles: vehicles
          .map((vehicle) => ({ title: vehicle.title, spaces: spaceLinks(address, vehicle) }))
          .filter(({ spaces }) => spaces.length > 0),
        jobs: jobs.map(({ job: { plan }, address: to }) => {
          return { id: plan.job.id, title: plan.job.title, href: linkTo(address, to) };
        }),
      };
      return { ...chromeOf(context, { address, title, above: aboveIndex }), body };
    },
  };
}

const aboveIndex = [
  ['Jobs', addresses.jobs],
  ['Reference', addresses.reference],
] as const;
const above = [...aboveIndex, [title, addresses.like] as const];

/** The spaces of a vehicle, each with the way to its nearest past boards. */
export function spaceLinks(from: string, { id, spaces }: Vehicle): Link[] {
  return Object.entries(spaces).map(([space, one]) => {
    return { title: one.title, href: linkTo(from, addresses.spaceLike(id, space)) };
  });
}

function spacePage(context: SiteContext, vehicle: Vehicle, id: string): Page {
  const { site } = context;
  const address = addresses.spaceLike(vehicle.id, id);
  const name = vehicle.spaces[id]?.title ?? id;
  return {
    address,
    template: 'like/boards.njk',
    model: () => {
      const wish = wishFor(site, { vehicle: vehicle.id, space: id }, () => null);
      const body: LikeBody = {
        of: { title: vehicle.title, href: linkTo(address, addresses.vehicle(vehicle.id)) },
        wishes: [ranked(context, { address, job: null }, { id, title: 'For any parts', wish })],
        command: `rackleaf like --vehicle ${vehicle.id} --space ${id} --part PART --part PART`,
      };
      return { ...chromeOf(context, { address, title: `${title}: ${name}`, above }), body };
    },
  };
}

function jobPage(context: SiteContext, { job: { plan }, address }: RankedJob): Page {
  const { site } = context;
  const { job } = plan;
  return {
    address,
    template: 'like/boards.njk',
    model: () => {
      const body: LikeBody = {
        of: { title: `${job.id}: ${job.title}`, href: linkTo(address, addresses.job(job.id)) },
        wishes: boardsOf(plan).map((board) => {
          const own = plan.boards.find(({ id }) => id === board.board)?.title ?? board.board;
          return ranked(
            context,
            { address, job: job.id },
            { id: board.board, title: `For ${own}`, wish: wishOfBoard(site, board) },
          );
        }),
        command: `rackleaf like ${job.id}`,
      };
      return { ...chromeOf(context, { address, title: `${title}: ${job.title}`, above }), body };
    },
  };
}

interface NamedWish {
  readonly id: string;
  readonly title: string;
  /** Null where the shop no longer has the vehicle, or that space of it. */
  readonly wish: Wish | null;
}

function ranked(
  context: SiteContext,
  place: { readonly address: string; readonly job: string | null },
  { id, title: head, wish }: NamedWish,
): RankedWish {
  if (!wish)
    return {
      ...{ id, title: head, facts: [], hits: [] },
      silence:
        'Its space is no longer in the files of the shop: there is nothing to hold past boards against.',
    };
  const hits = boardHits(context, place, wish);
  const write = writerFor(context.site.shop);
  const parts = wish.parts?.map(({ part }) => part) ?? [];
  return {
    id,
    title: head,
    facts: [
      fact('Space', { text: wish.space.title, beside: wish.space.id }),
      fact('Free depth', write.length('room-free', wish.space.depthM)),
      ...(parts.length === 0 ? [] : [fact('Parts', parts.join(', '))]),
    ],
    hits,
    silence: hits.length === 0 ? 'No other job has a board yet.' : '',
  };
}
