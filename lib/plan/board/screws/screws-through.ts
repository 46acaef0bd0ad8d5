import { pastFootM } from '../../../board/cut/drill.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import type { PlanBoard } from '../../../model/plan/index.ts';
import { mountingScrew, screwedInto } from './mounting-screw.ts';

/** A screw that comes out of a board behind, by how much, and at which parts (m). */
export interface ScrewThrough {
  readonly screw: string;
  readonly outM: number;
  /** What is free behind the board. */
  readonly freeM: number;
  readonly items: readonly string[];
  /** The feet that it goes through. */
  readonly feetM: readonly number[];
}

/** The screws of parts that come out of a board behind. Of a foot that nobody told it is not known. */
export function screwsThrough(
  job: Pick<Job, 'parts' | 'rules' | 'shop' | 'devices'>,
  board: Pick<Board, 'given'>,
  { thicknessM, placements }: Pick<PlanBoard, 'thicknessM' | 'placements'>,
): readonly ScrewThrough[] {
  const into = screwedInto(board, thicknessM);
  const found = new Map<string, ScrewThrough>();
  for (const { item } of placements) {
    const { facts } = job.devices.find(({ id }) => id === item) ?? {};
    for (const hole of facts?.footprint?.holes ?? []) {
      const screw = hole.footM === undefined ? null : mountingScrew(hole, job, into);
      if (screw?.part.length === undefined) continue;
      const outM = pastFootM(screw.part.length, hole) - thicknessM;
      if (outM <= 1e-9) continue;
      const before = found.get(screw.id);
      found.set(screw.id, {
        screw: screw.id,
        freeM: into.freeM,
        outM: Math.max(outM, before?.outM ?? 0),
        items: [...new Set([...(before?.items ?? []), item])],
        feetM: [...(before?.feetM ?? []), hole.footM ?? 0],
      });
    }
  }
  return [...found.values()];
}
