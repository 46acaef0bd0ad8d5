import type { Change } from '../../like/change.ts';
import { pastBoards } from '../../like/past-board.ts';
import { type NearestBoard, nearestBoards } from '../../like/rank-boards.ts';
import { type LikeShop, wishFor, wishOfBoard } from '../../like/shop-wishes.ts';
import { changeWork, standsText, workText } from '../../like/told.ts';
import { type Wish, type WishedPart, wishedPart } from '../../like/wish.ts';
import type { Keep } from '../../model/keep.ts';
import { type LengthWriter, worded } from '../../model/phrase.ts';
import { printed } from '../../model/printed/index.ts';
import { printedLength } from '../../model/printed/lengths.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { remedyFor } from '../../read/report.ts';
import { counted } from '../../rules/words.ts';
import { withCrew } from '../crew/with-crew.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus, statusOf } from '../exit-status.ts';
import { type LoadedShop, loadShop, missingJob, missingStatus } from '../shop/load-shop.ts';
import { tellFailed, tellProblems } from '../told/report.ts';
import type { LikeWish } from './like-wish.ts';

/** A wish with what it is for. */
interface Named {
  readonly board: string | null;
  readonly wish: Wish;
}

/**
 * `rackleaf like JOB` and `rackleaf like --vehicle VEHICLE --space SPACE --part PART`: the past boards that ask for least
 * work to serve, with what would have to change of each. Released ones count as they were frozen, others as planned today.
 */
export function like(effects: Effects, asked: LikeWish): Promise<ExitStatus> {
  return withCrew(effects, async (crew) => {
    const shop = await loadShop(effects, crew, { compares: false });
    return tellNearest(effects, shop, asked, crew.keep);
  });
}

async function tellNearest(
  effects: Effects,
  shop: LoadedShop,
  asked: LikeWish,
  keep: Keep,
): Promise<ExitStatus> {
  tellProblems(shop, effects);
  tellFailed(shop, effects);
  const { shop: file, parts, vehicles } = shop.content();
  if (!file) return exitStatus.inputErrors;
  const named = asked.job === null ? wishOfSpace({ shop: file, parts, vehicles }, asked) : null;
  if (typeof named === 'string') {
    effects.tell(`like: ${named}`);
    return exitStatus.inputErrors;
  }
  const own = shop.jobs.find(({ job }) => job.id === asked.job);
  if (asked.job !== null && !own) {
    effects.tell(missingJob(shop, asked.job));
    return missingStatus(shop);
  }
  const wishes = named ?? wishesOfJob({ shop: file, parts, vehicles }, shop, asked.job ?? '');
  if (wishes.length === 0)
    effects.tell(
      `like: ${asked.job} has no board in a space of its vehicle; name what it is for: rackleaf like --vehicle VEHICLE --space SPACE --part PART`,
    );
  const past = shop.jobs.flatMap(({ job, plan }) => (job.id === asked.job ? [] : pastBoards(plan)));
  const style = lengthStyle(file);
  const write: LengthWriter = (kind, lengthM) => printedLength(kind, lengthM, style).primary;
  const found = wishes.map((one) => ({ ...one, nearest: nearestBoards(one.wish, past, asked.most, keep) }));
  effects.out(
    asked.json
      ? JSON.stringify(
          found.map((one) => asData(one, write)),
          null,
          2,
        )
      : found.map((one) => asText(one, write)).join('\n\n'),
  );
  return statusOf({
    problems: shop.problems.length > 0 || wishes.length === 0,
    stopped: false,
    failed: shop.failed.length > 0,
  });
}

function wishesOfJob(shop: LikeShop, { jobs }: Pick<LoadedShop, 'jobs'>, job: string): Named[] {
  const plan = jobs.find((one) => one.job.id === job)?.plan;
  return (plan ? pastBoards(plan) : []).flatMap((board): Named[] => {
    const wish = wishOfBoard(shop, board);
    return wish ? [{ board: board.board, wish }] : [];
  });
}

/** The wish of a command line; why there is none where a name is not known. */
function wishOfSpace(shop: LikeShop, asked: LikeWish): Named[] | string {
  const names = Object.keys(shop.vehicles);
  const vehicleId = asked.vehicle ?? (names.length === 1 ? (names[0] ?? '') : null);
  if (vehicleId === null) return `name the vehicle: --vehicle ${names.join(', ')}`;
  const vehicle = Object.hasOwn(shop.vehicles, vehicleId) ? shop.vehicles[vehicleId] : undefined;
  if (!vehicle) return `there is no vehicle "${vehicleId}"; ${remedyFor(vehicleId, names)}`;
  const spaces = Object.keys(vehicle.spaces);
  const spaceId = asked.space ?? (spaces.length === 1 ? (spaces[0] ?? '') : null);
  if (spaceId === null) return `name the space of ${vehicleId}: --space ${spaces.join(', ')}`;
  if (!spaces.includes(spaceId))
    return `there is no space "${spaceId}" in ${vehicleId}; ${remedyFor(spaceId, spaces)}`;
  const unknown = asked.parts.find((id) => !Object.hasOwn(shop.parts, id));
  if (unknown !== undefined)
    return `there is no part "${unknown}"; ${remedyFor(unknown, Object.keys(shop.parts))}`;
  const faults: string[] = [];
  const wish = wishFor(shop, { vehicle: vehicleId, space: spaceId }, (rules) => {
    const wished = asked.parts.flatMap((id): WishedPart[] => {
      const part = shop.parts[id];
      const one = part ? wishedPart(id, part, rules) : null;
      if (!one) faults.push(`${id} can't stand on a board: it has no size and mass`);
      return one ? [one] : [];
    });
    return asked.parts.length === 0 ? null : wished;
  });
  if (faults.length > 0) return faults.join('\n');
  return wish ? [{ board: null, wish }] : [];
}

interface Found extends Named {
  readonly nearest: readonly NearestBoard[];
}

/** What is found, for a program: lengths in metres, changes in words as well. */
function asData({ board, wish, nearest }: Found, write: LengthWriter): object {
  const { space, parts } = wish;
  return {
    ...{ vehicle: space.vehicle, space: space.id, board },
    parts: parts?.map(({ part }) => part) ?? null,
    nearest: nearest.map(({ board: past, ...one }) => ({
      job: past.job,
      board: past.board,
      revision: past.revision,
      status: past.status,
      vehicle: past.vehicle,
      space: past.space,
      stops: past.stops,
      cautions: past.cautions,
      ...one,
      changes: one.changes.map((change) => ({ ...change, told: worded(change.told, write) })),
    })),
  };
}

function asText({ board, wish, nearest }: Found, write: LengthWriter): string {
  const { space, parts } = wish;
  const what = parts ? parts.map(({ part }) => part).join(', ') : 'any parts';
  const head = `${space.id} of ${space.vehicle}${board === null ? '' : `, for ${board}`}: ${what}`;
  if (nearest.length === 0) return `${head}\nno past board to compare with`;
  return [head, ...nearest.map((one, at) => hitText(one, at + 1, write))].join('\n');
}

function hitText(hit: NearestBoard, at: number, write: LengthWriter): string {
  const { board, changes, supply } = hit;
  return [
    `${at}. ${board.job}, ${board.board}, revision ${board.revision} (${board.status}): ${workText(hit)}; ${standsText(hit, write)}`,
    `   drew ${printed('current-carried', supply.hadA)} at rated power, ${printed('current-carried', supply.needsA)} wanted; ${counted(board.stops, 'stop')}, ${counted(board.cautions, 'caution')}`,
    ...changes.map((change) => `   ${changeText(change)}${worded(change.told, write)}`),
  ].join('\n');
}

function changeText(change: Change): string {
  return change.minutes === 0 && !change.blocks ? '- ' : `${changeWork(change)}: `;
}
