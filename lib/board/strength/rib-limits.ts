import { type Box, type Point, type Ring, ringOfBox } from '../shape/point.ts';
import type { Region } from '../shape/region.ts';
import type { LaidRib, RibFace, RibObstacle } from './rib.ts';

/** What ribs of a board keep off, in the board's axes. Metres. */
export interface RibLimits {
  readonly region: Region;
  readonly fixings: readonly (Point & {
    readonly id: string;
    readonly spacerM: number;
    /** 0 where it is not known. */
    readonly holeM: number;
  })[];
  /** Holes right through that stay open; pilots of screws that end in the board or a rib are left out. */
  readonly holes: readonly (Point & { readonly of: string; readonly diameterM: number })[];
  /** Parts that stand on the mounting side, and their undersides over it. */
  readonly parts: readonly { readonly id: string; readonly box: Box; readonly raisedM: number }[];
  /** What stands out in the space, from its back plane. */
  readonly obstacles: readonly { readonly id: string; readonly ring: Ring; readonly standsOutM: number }[];
  /** From the back plane to the rear of the board; of the board; of the space. */
  readonly standoffM: number;
  readonly thicknessM: number;
  readonly depthM: number;
  /** House rules: the room that ribs keep, and the side of a pad below a fixing. */
  readonly clearanceM: number;
  readonly padM: number;
}

/** A hole of a plan, as ribs see it. */
type PlannedHole = Point & {
  readonly of: string;
  readonly diameterM: number;
  readonly depthM: number | null;
  readonly pilotFor: string | null;
  readonly purpose: string;
};

/** The holes that a rib must leave open: right through, and neither for a fixing nor the pilot of a screw. */
export function openHoles(holes: readonly PlannedHole[]): RibLimits['holes'] {
  return holes
    .filter(({ depthM, pilotFor, purpose }) => depthM === null && pilotFor === null && purpose !== 'fixing')
    .map(({ of, xM, yM, diameterM }) => ({ of, xM, yM, diameterM }));
}

/** Room left between a rib and the panel behind it, or the front of the space before it; below zero it is missing. */
export function ribRoomM(
  { face, heightM }: Pick<LaidRib, 'face' | 'heightM'>,
  { standoffM, thicknessM, depthM }: Pick<RibLimits, 'standoffM' | 'thicknessM' | 'depthM'>,
): number {
  return (face === 'rear' ? standoffM : depthM - standoffM - thicknessM) - heightM;
}

/** What is in the way of a rib of a height on a face of the board itself: its fixings, its holes, its parts. */
export function onFace(ground: RibLimits, face: RibFace, heightM: number): RibObstacle[] {
  const fixings = ground.fixings.map(({ id, spacerM, holeM, ...at }): RibObstacle => {
    // A head, nut or washer is about twice its hole across; a spacer may be a pad of the sheet.
    const head = holeM > 0 ? holeM : 0.006;
    const padded = face === 'rear' && spacerM > 0;
    const what = padded ? `the spacer of ${id}` : `the head of ${id}`;
    return { of: id, what, ring: square(at, padded ? ground.padM / 2 : head) };
  });
  const holes = ground.holes.map(({ of, diameterM, ...at }): RibObstacle => {
    return { of, what: `the hole of ${of}`, ring: octagon(at, diameterM / 2) };
  });
  const parts = ground.parts
    .filter(({ raisedM }) => face === 'mounting' && raisedM < heightM - 1e-9)
    .map(({ id, box }): RibObstacle => ({ of: id, what: id, ring: ringOfBox(box) }));
  return [...fixings, ...holes, ...parts];
}

/** The same with what stands in the space at the height of the rib. */
export function inTheWay(ground: RibLimits, face: RibFace, heightM: number): RibObstacle[] {
  const { standoffM, thicknessM } = ground;
  const underM = face === 'rear' ? standoffM - heightM : standoffM + thicknessM;
  const space = ground.obstacles
    .filter(({ standsOutM }) => standsOutM > underM - ground.clearanceM)
    .map(({ id, ring }): RibObstacle => ({ of: id, what: id, ring }));
  return [...onFace(ground, face, heightM), ...space];
}

function square({ xM, yM }: Point, reachM: number): Ring {
  return ringOfBox({ minX: xM - reachM, minY: yM - reachM, maxX: xM + reachM, maxY: yM + reachM });
}

/** Eight corners round a circle, so that it is never taken for smaller. */
function octagon({ xM, yM }: Point, radiusM: number): Ring {
  const reachM = Math.max(radiusM, 1e-4) / Math.cos(Math.PI / 8);
  return Array.from({ length: 8 }, (_, at) => {
    const angle = ((at + 0.5) * Math.PI) / 4;
    return { xM: xM + reachM * Math.cos(angle), yM: yM + reachM * Math.sin(angle) };
  });
}
