import type { LengthWriter } from '../model/phrase.ts';
import type { Change } from './change.ts';
import type { NearestBoard } from './rank-boards.ts';

/** A time for work, never told as less: `12 min`. */
export function workTime(minutes: number): string {
  return `${Math.ceil(minutes)} min`;
}

/** What a past board asks for in all, in words. */
export function workText({
  blocked,
  changes,
  minutes,
}: Pick<NearestBoard, 'blocked' | 'changes' | 'minutes'>): string {
  if (blocked) return 'can not serve';
  return changes.length === 0 ? 'nothing to change' : workTime(minutes);
}

/** What one change asks for, in words. */
export function changeWork({ blocks, minutes }: Pick<Change, 'blocks' | 'minutes'>): string {
  return blocks ? 'no way' : workTime(minutes);
}

/** Where a past board goes into the space, in words. */
export function standsText({ place }: Pick<NearestBoard, 'place'>, write: LengthWriter): string {
  if (!place) return 'does not go in as it is';
  const turned = place.turnDeg === 0 ? '' : `, turned by ${place.turnDeg} degrees`;
  return `goes in at x ${write('position', place.xM)}, y ${write('position', place.yM)}${turned}`;
}

/** The command that begins a job from a past board, in a space of a vehicle. */
export function beginCommand(job: string, { vehicle, space }: { vehicle: string; space: string }): string {
  return `rackleaf new job NAME --like ${job} --vehicle ${vehicle} --space ${space}`;
}
