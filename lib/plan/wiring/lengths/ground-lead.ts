import type { WantedLength } from '../../../board/layout/score/links.ts';
import { sidePoints } from '../../../board/shape/ring-side.ts';
import { type Board, bodyId, type Device, type Job, type Link } from '../../../model/content/resolved-job.ts';
import { mountingSpace } from '../../board/board-pose.ts';
import { datumInSpace } from '../../board/board-shape.ts';
import { devicesById } from '../conductor-role.ts';
import { offBoard } from '../wire-lengths.ts';

/** False for what may be grounded by a lead of any length: what a fan draws lifts no ground, and no signal goes through it. */
export function asksShortGround(device: Device | undefined): boolean {
  return device?.spec?.kind !== 'fan';
}

/**
 * What the house's longest ground lead leaves for the way of a link on its board and on to the rim; null for one that is
 * no lead from the board to the body, or is laid in a branch, and where the rest of it is too long already: no place on the
 * board mends that, and none is worse for it.
 */
export function wantedGround(job: Job, board: Board, link: Link): WantedLength | null {
  const devices = devicesById(job);
  const ends = [link.from, link.to].flatMap((end) => devices.get(end.device) ?? []);
  const device = ends.find((one) => one.board === board.id);
  const isToBody = [link.from, link.to].some((end) => end.device === bodyId);
  if (!isToBody || !device || !asksShortGround(device) || link.given?.branch) return null;
  const { run, runM, hingesM, loopsM } = offBoard(job, devices, link);
  const lengthM = job.rules['ground-lead'].value - runM - hingesM - loopsM;
  if (lengthM <= 0) return null;
  const { reaches } = run?.route ?? {};
  const { xM, yM } = datumInSpace(board);
  const rim =
    reaches?.space === board.spaceId
      ? sidePoints(mountingSpace(board).outline, reaches.edge, reaches.at)
      : [];
  return {
    lengthM,
    rim: rim.map((point) => ({ xM: point.xM - xM, yM: point.yM - yM })),
  };
}
