import type { JobBoard, JobFile } from '../../model/content/job.ts';
import type { Board, BoardRib, Device } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { Part } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import { withArticle } from '../../model/printed/with-article.ts';
import { lookPart } from '../names/look-part.ts';
import type { Report } from '../report.ts';

type Parts = Readonly<Record<string, Part>>;

/** The boards of a job with their sheet, their space, their fixings and their screws looked up. */
export function resolveBoards(
  job: JobFile,
  vehicle: Vehicle,
  { parts, devices }: { readonly parts: Parts; readonly devices: readonly Device[] },
  report: Report,
): Board[] {
  const boards = boardsOf(job, vehicle, parts, report);
  checkScrewHoles(boards, devices, parts, report);
  return boards;
}

function boardsOf(job: JobFile, vehicle: Vehicle, parts: Parts, report: Report): Board[] {
  if (job.space !== undefined) report.look(['space'], `space of ${vehicle.id}`, job.space, vehicle.spaces);
  return Object.entries(job.boards).flatMap(([id, given]): Board[] => {
    const path = ['boards', id];
    const sheet =
      given.sheet === undefined
        ? anySheet(path, parts, report)
        : sheetOf([...path, 'sheet'], given.sheet, parts, report);
    const ribs = ribsOf(path, given.ribs, parts, report);
    const spaceId = given.space ?? job.space;
    if (spaceId === undefined) {
      report.at(path, `${id} has no space in the vehicle`, 'write space: with a space of the vehicle');
      return [];
    }
    const space =
      given.space === undefined
        ? vehicle.spaces[spaceId]
        : report.look([...path, 'space'], `space of ${vehicle.id}`, spaceId, vehicle.spaces);
    checkScrew([...path, 'screw'], given, parts, report);
    if (!sheet || !space) return [];
    for (const [name, fixing] of Object.entries(given.fixings)) {
      report.look(
        [...path, 'fixings', name, 'point'],
        `sound point of ${spaceId}`,
        fixing.point,
        space['sound-points'],
      );
      const part = lookPart(report, [...path, 'fixings', name, 'fixing'], fixing.fixing, parts, 'fixing');
      if (part && part.kind !== 'fixing')
        report.at(
          [...path, 'fixings', name, 'fixing'],
          `"${fixing.fixing}" is not a fixing but ${withArticle(part.kind)}`,
        );
    }
    const cut = { sheetId: sheet.id, sheet: sheet.part, ribs };
    return [{ id, path: pointer(path), given, spaceId, space, ...cut }];
  });
}

/** The screw that is named for the parts of a board is a wood screw whose holes are known. */
function checkScrew(path: readonly string[], { screw }: JobBoard, parts: Parts, report: Report): void {
  const part = screw === undefined ? null : lookPart(report, path, screw, parts, 'fixing');
  if (!part) return;
  const isScrew = part.kind === 'fixing' && part.form === 'wood-screw';
  const isWhole = isScrew && part.pilot !== undefined && part.clearance !== undefined;
  const what = part.kind === 'fixing' ? part.form : part.kind;
  if (!isScrew)
    report.at(
      path,
      `"${screw}" is no wood screw but ${withArticle(what)}`,
      'name a fixing of the form wood-screw',
    );
  else if (!isWhole)
    report.at(
      path,
      `"${screw}" tells no pilot and clearance hole`,
      `write pilot: and clearance: in ${screw}`,
    );
}

/** Each hole of a part lets the screw through that is named for its board. */
function checkScrewHoles(
  boards: readonly Board[],
  devices: readonly Device[],
  parts: Parts,
  report: Report,
): void {
  for (const { id, given } of boards) {
    const part = given.screw === undefined ? undefined : parts[given.screw];
    if (part?.kind !== 'fixing' || part.clearance === undefined) continue;
    const { clearance } = part;
    const narrow = devices.filter(
      ({ board, facts }) =>
        board === id && (facts.footprint?.holes ?? []).some(({ diameterM }) => diameterM < clearance - 1e-6),
    );
    if (narrow.length > 0)
      report.at(
        ['boards', id, 'screw'],
        `${given.screw} does not pass the holes of ${narrow.map((one) => one.id).join(' and ')}`,
        'name a thinner one, or leave screw: out: one is chosen for each hole',
      );
  }
}

type Sheet = NonNullable<BoardRib['sheet']>;

/** Where the sheet is left open, the plan chooses; the catalogue must have one to choose. */
function anySheet(path: readonly string[], parts: Parts, report: Report): Sheet | null {
  const [first] = Object.entries(parts).flatMap(([id, part]) =>
    part.kind === 'board-sheet' ? [{ id, part }] : [],
  );
  if (!first)
    report.at(
      path,
      'the sheet is left open, and the catalogue has no board sheet to choose from',
      'add a part of the kind board-sheet',
    );
  return first ?? null;
}

function ribsOf(
  path: readonly string[],
  ribs: JobBoard['ribs'],
  parts: Parts,
  report: Report,
): readonly BoardRib[] {
  return Object.entries(ribs).map(([id, given]): BoardRib => {
    const own = [...path, 'ribs', id, 'sheet'];
    return { id, given, sheet: given.sheet === undefined ? null : sheetOf(own, given.sheet, parts, report) };
  });
}

function sheetOf(path: readonly string[], name: string, parts: Parts, report: Report): Sheet | null {
  const part = lookPart(report, path, name, parts, 'board-sheet');
  if (!part) return null;
  if (part.kind === 'board-sheet') return { id: name, part };
  report.at(
    path,
    `"${name}" is not a board sheet but ${withArticle(part.kind)}`,
    'name a part of the kind board-sheet',
  );
  return null;
}
