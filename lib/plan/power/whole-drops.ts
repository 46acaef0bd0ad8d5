import type { DeviceDrop } from '../../model/plan/index.ts';

/** A drop that is known on both sides. */
export type WholeDrop = DeviceDrop & {
  readonly feedDropV: number;
  readonly groundDropV: number;
  readonly share: number;
};

/** The drops that are known on both sides. */
export function wholeDrops(drops: readonly DeviceDrop[]): WholeDrop[] {
  return drops.flatMap((drop): WholeDrop[] => {
    const { feedDropV, groundDropV, share } = drop;
    return feedDropV === null || groundDropV === null || share === null
      ? []
      : [{ ...drop, feedDropV, groundDropV, share }];
  });
}
