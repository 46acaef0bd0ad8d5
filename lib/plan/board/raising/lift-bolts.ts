import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { boltsInto, holdsIn, type NamedSheet, sheetsFor } from '../../../propose/laying/bolts.ts';

/** A sheet under which a board stands, and the bolts that its fixings are to have there instead of their own. */
export interface BoltedSheet {
  readonly sheet: NamedSheet;
  /** By the names of the fixings; none where all bolts stay. */
  readonly bolts: ReadonlyMap<string, string>;
}

/**
 * What a board may be cut from at a height off its panel, so that every fixing that holds now holds there, the first as
 * it is written or chosen: of the shelf's other sheets those of its own material first, the nearest in thickness first.
 */
export function boltedSheets(job: Job, board: Board, heightM: number): readonly BoltedSheet[] {
  const own = { id: board.sheetId, part: board.sheet };
  const farM = ({ part }: NamedSheet) => Math.abs(part.thickness - own.part.thickness);
  const others = sheetsFor(job, {})
    .filter(({ id }) => id !== own.id)
    .toSorted(
      (a, b) =>
        Number(a.part.material !== own.part.material) - Number(b.part.material !== own.part.material) ||
        farM(a) - farM(b) ||
        b.part.thickness - a.part.thickness,
    );
  return [own, ...others].flatMap((sheet) => {
    const bolts = boltsAt(job, board, sheet, heightM);
    return bolts ? [{ sheet, bolts }] : [];
  });
}

/** The bolts that change; null where a fixing that holds now would have none. */
function boltsAt(
  job: Job,
  board: Board,
  { part: sheet }: NamedSheet,
  heightM: number,
): ReadonlyMap<string, string> | null {
  // The shelf may make a spacer so much higher.
  const toleranceM = heightM > 0 ? job.rules['spacer-tolerance'].value : 0;
  const bolts = new Map<string, string>();
  for (const [name, { fixing, point: at, spacer = 0 }] of Object.entries(board.given.fixings)) {
    const part = job.parts[fixing];
    const point = board.space['sound-points'][at];
    if (!point || part?.kind !== 'fixing' || part.form !== 'bolt' || part.thread !== point.stud) continue;
    const stackM = heightM + sheet.thickness;
    const holds = (lengthM: number) =>
      holdsIn(job, lengthM, stackM, point) && holdsIn(job, lengthM, stackM + toleranceM, point);
    if (holds(part.length ?? 0)) continue;
    const bolt = boltsInto(job, point).find(({ lengthM }) => holds(lengthM));
    if (bolt) bolts.set(name, bolt.id);
    else if (holdsIn(job, part.length ?? 0, spacer + board.sheet.thickness, point)) return null;
  }
  return bolts;
}
