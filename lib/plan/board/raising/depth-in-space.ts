import type { Board, Job } from '../../../model/content/resolved-job.ts';
import type { PlanBoard, PlanRib } from '../../../model/plan/board.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import type { PlanBook } from '../../plan-book.ts';
import { boardPose } from '../board-pose.ts';
import type { BoardFixing } from '../board-shape.ts';
import type { LaidBoard } from '../laid-board.ts';

/** What stands on the face of a board, and the room that is kept before it, metres. */
interface Standing {
  readonly of: string | null;
  readonly raisedM: number;
  readonly heightM: number;
  readonly roomM: number;
}

/**
 * What a board takes of the depth of its space, metres: its spacers, its sheet, and of all that stands on its face what
 * asks for most with the room before it. The room is the clearance of the space, and the air that a maker asks for over
 * a part where the front is closed; before a rib that of ribs. Plane geometry.
 */
export function depthInSpace(
  job: Job,
  { board, items, placements }: LaidBoard,
  { fixings, ribs }: { readonly fixings: readonly BoardFixing[]; readonly ribs: readonly PlanRib[] },
  book: PlanBook,
): NonNullable<PlanBoard['depth']> {
  const clearanceM = job.rules['space-clearance'].value;
  const isClosed = board.space.bounds.front !== 'open';
  const parts = placements.flatMap((at): Standing[] => {
    const item = items.find(({ id }) => id === at.item);
    if (!item) return [];
    const airM = isClosed ? (item.airOverM ?? 0) : 0;
    const roomM = Math.max(clearanceM, airM);
    return [{ of: item.id, raisedM: at.heightM, heightM: item.heightM, roomM }];
  });
  const before = ribs.flatMap(({ id, face, heightM }): Standing[] =>
    face === 'rear' ? [] : [{ of: id, raisedM: 0, heightM, roomM: job.rules['rib-clearance'].value }],
  );
  const bare: Standing = { of: null, raisedM: 0, heightM: 0, roomM: clearanceM };
  const most = [...parts, ...before].reduce((best, one) => (takenM(one) > takenM(best) ? one : best), bare);
  const { standoffM: spacerM } = boardPose(board, fixings);
  const total = totalOf(board, spacerM, most);
  return { ...most, spacerM, totalM: book.trace(`boards.${board.id}.depth.totalM`, total) };
}

function takenM({ raisedM, heightM, roomM }: Standing): number {
  return raisedM + heightM + roomM;
}

function totalOf({ sheet }: Board, spacerM: number, most: Standing): Traced<number> {
  return traced(spacerM + sheet.thickness + takenM(most), 'm', {
    rule: 'board-depth',
    formula: 'spacer + thickness + raised + height + room before it',
    citation: 'plane geometry',
    inputs: [
      ['part', most.of ?? 'board', ''],
      ['spacer', spacerM, 'm'],
      ['thickness', sheet.thickness, 'm'],
      ['raised', most.raisedM, 'm'],
      ['height', most.heightM, 'm'],
      ['room before it', most.roomM, 'm'],
    ],
  });
}
