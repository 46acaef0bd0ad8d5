import type { MountingSpace } from '../../board/layout/fit-in-space.ts';
import { type Ring, ringOfBox } from '../../board/shape/point.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';

/** A space of a vehicle, with its obstacles as boxes that stand out from its back plane. Metres. */
export function mountingSpaceOf({
  outline,
  depth,
  obstacles,
}: Pick<VehicleSpace, 'outline' | 'depth' | 'obstacles'>): MountingSpace {
  return {
    outline: outline.map(([xM, yM]) => ({ xM, yM })),
    depthM: depth,
    obstacles: Object.entries(obstacles).map(([id, { x, y, width, height, 'stands-out': toM }]) => {
      return { id, outline: boxRing(x, y, width, height), fromM: 0, toM };
    }),
  };
}

/** The same with what has to stay reachable in it kept free as if it stood there. */
export function keptSpaceOf(
  space: Pick<VehicleSpace, 'outline' | 'depth' | 'obstacles' | 'keep-reachable'>,
  isKept: (area: { readonly must: boolean }) => boolean,
): MountingSpace {
  const own = mountingSpaceOf(space);
  const areas = Object.entries(space['keep-reachable'])
    .filter(([, area]) => isKept(area))
    .map(([id, { x, y, width, height, before }]) => {
      return { id, outline: boxRing(x, y, width, height), fromM: 0, toM: before };
    });
  return { ...own, obstacles: [...own.obstacles, ...areas] };
}

/** An upright rectangle as a ring, metres. */
export function boxRing(xM: number, yM: number, widthM: number, heightM: number): Ring {
  return ringOfBox({ minX: xM, minY: yM, maxX: xM + widthM, maxY: yM + heightM });
}
