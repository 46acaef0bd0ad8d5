import type { DeviceDrop } from '../../model/plan/index.ts';

/** A drop that is known on both sides. */
export type WholeDrop = DeviceDrop & {
  readonly feedDropV: number;
  readonly groundDropV: number;
  readonly share: number;
};

/** What a ground side loses (V) where nothing that other currents lift on it is relied on: as its limit is held. */
export function groundLossV({
  groundDropV,
  groundLiftedV = 0,
}: Pick<WholeDrop, 'groundDropV' | 'groundLiftedV'>): number {
  return groundDropV + groundLiftedV;
}

/** The drops that are known on both sides. */
export function wholeDrops(drops: readonly DeviceDrop[]): WholeDrop[] {
  return drops.flatMap((drop): WholeDrop[] => {
    const { feedDropV, groundDropV, share } = drop;
    return feedDropV === null || groundDropV === null || share === null
      ? []
      : [{ ...drop, feedDropV, groundDropV, share }];
  });
}
