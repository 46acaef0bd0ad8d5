import type { JobFile } from '../model/job.ts';
import type { Part } from '../model/kinds/index.ts';
import { pointer } from '../model/place.ts';
import type { Board } from '../model/resolved-job.ts';
import type { Vehicle } from '../model/vehicle.ts';
import type { Report } from './report.ts';

type Parts = Readonly<Record<string, Part>>;

/** The boards of a job with their sheet, their space and their fixings looked up. */
export function resolveBoards(job: JobFile, vehicle: Vehicle, parts: Parts, report: Report): Board[] {
  if (job.space !== undefined) report.look(['space'], `space of ${vehicle.id}`, job.space, vehicle.spaces);
  return Object.entries(job.boards).flatMap(([id, given]): Board[] => {
    const path = ['boards', id];
    const sheet = sheetOf([...path, 'sheet'], given.sheet, parts, report);
    const spaceId = given.space ?? job.space;
    if (spaceId === undefined) {
      report.at(path, `${id} has no space in the vehicle`, 'write space: with a space of the vehicle');
      return [];
    }
    const space =
      given.space === undefined
        ? vehicle.spaces[spaceId]
        : report.look([...path, 'space'], `space of ${vehicle.id}`, spaceId, vehicle.spaces);
    if (!sheet || !space) return [];
    for (const [name, fixing] of Object.entries(given.fixings)) {
      report.look(
        [...path, 'fixings', name, 'point'],
        `sound point of ${spaceId}`,
        fixing.point,
        space['sound-points'],
      );
      const part = report.look([...path, 'fixings', name, 'fixing'], 'part', fixing.fixing, parts);
      if (part && part.kind !== 'fixing')
        report.at(
          [...path, 'fixings', name, 'fixing'],
          `"${fixing.fixing}" is not a fixing but ${part.kind}`,
        );
    }
    return [{ id, path: pointer(path), given, spaceId, space, sheet }];
  });
}

function sheetOf(path: readonly string[], name: string, parts: Parts, report: Report): Board['sheet'] | null {
  const part = report.look(path, 'part', name, parts);
  if (!part) return null;
  if (part.kind === 'board-sheet') return part;
  report.at(path, `"${name}" is not a board sheet but ${part.kind}`, 'name a part of the kind board-sheet');
  return null;
}
