import { drawOutline } from '../../board/shape/outline.ts';
import type { BuiltBoard, BuiltJob } from '../../model/content/built.ts';
import type { JobBoard, WrittenBoard, WrittenJob } from '../../model/content/job.ts';
import type { Proposal } from '../../model/content/proposal.ts';
import type { Draft } from '../draft/draft.ts';
import { said } from './built-links.ts';

/** What two lengths of one board may differ by, once written and read again (m). */
const sameM = 1e-6;

/** The fixings that were proposed for boards that are cut and stand as they did, all of a board or none. */
export function heldFixings(draft: Draft, written: WrittenJob, built: BuiltJob): readonly Proposal[] {
  const named = new Set(written.anew);
  return Object.entries(draft.boards).flatMap(([id, board]): readonly Proposal[] => {
    const before = built.boards[id];
    const own = built.proposals.filter(
      ({ path }) => path[0] === 'boards' && path[1] === id && path[2] === 'fixings',
    );
    if (!before || named.has(id) || written.boards[id]?.fixings !== undefined) return [];
    const space = draft.around.vehicle.spaces[draft.spaceOf(id) ?? ''];
    const stands = draft.spaceOf(id) === before.space && isCutAs(board, before) && isAt(board, before);
    const areThere = own.every(
      (one) =>
        (said(one, 'point') ?? '') in (space?.['sound-points'] ?? {}) &&
        (said(one, 'fixing') ?? '') in draft.around.parts,
    );
    return stands && areThere ? own : [];
  });
}

/** True for a board of the outline that was built. */
export function isCutAs(
  { outline }: Pick<WrittenBoard, 'outline'>,
  { outline: before }: BuiltBoard,
): boolean {
  if (!outline) return false;
  const { shape } = drawOutline(outline);
  const own = shape?.outline ?? [];
  return (
    own.length === before.length &&
    own.every((point, at) => {
      const other = before[at];
      return (
        other !== undefined &&
        Math.hypot(point.xM - other.xM, point.yM - other.yM) <= sameM &&
        Math.abs(point.bulge - other.bulge) <= sameM
      );
    })
  );
}

function isAt({ at }: Pick<JobBoard, 'at'>, { xM, yM }: BuiltBoard): boolean {
  return at !== undefined && Math.hypot(at.x - xM, at.y - yM) <= sameM;
}
