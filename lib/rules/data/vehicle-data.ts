import { type Side, sides } from '../../board/layout/item.ts';
import type { Board } from '../../model/content/resolved-job.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import { pointer } from '../../model/place.ts';
import type { Direction } from '../../model/vocabulary.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { figure, lengthIn } from '../words.ts';

/** The spaces that boards of the job go into, each once. */
function usedSpaces({ job }: Case): readonly Pick<Board, 'spaceId' | 'space'>[] {
  const seen = new Set<string>();
  return job.boards.filter(({ spaceId }) => !seen.has(spaceId) && seen.add(spaceId));
}

/** Directions as vectors: front, left and up are the axes of the vehicle (ISO 8855). */
const vectors: Readonly<Record<Direction, readonly [number, number, number]>> = {
  front: [1, 0, 0],
  rear: [-1, 0, 0],
  left: [0, 1, 0],
  right: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
};

/** How far left the mounting side of a plane faces: the second component of right x upward. */
function facesLeft({ right, upward }: VehicleSpace): number {
  const [ax, , az] = vectors[right];
  const [bx, , bz] = vectors[upward];
  return az * bx - ax * bz;
}

const seenFromBehind: Rule = {
  id: 'space-seen-from-behind',
  judge: (about) =>
    usedSpaces(about).flatMap(({ spaceId, space }): Verdict<'space-seen-from-behind'>[] => {
      const outward = space.side === 'left' ? 1 : space.side === 'right' ? -1 : 0;
      if (outward === 0 || facesLeft(space) !== outward) return [];
      return [
        {
          level: 'caution',
          of: [spaceId],
          message: `${spaceId} lies on the ${space.side} and, with right: ${space.right} and upward: ${space.upward}, is seen from outside the vehicle: a board measured from inside comes out mirrored`,
          remedy: `stand before it in the vehicle and write where your right hand points; or correct side:`,
          file: 'vehicle',
          path: pointer(['spaces', spaceId, 'right']),
        },
      ];
    }),
};

const opposite: Readonly<Record<Direction, Direction>> = {
  front: 'rear',
  rear: 'front',
  left: 'right',
  right: 'left',
  up: 'down',
  down: 'up',
};

/** Which way of the vehicle each edge of a space lies. */
function edgeDirections({ right, upward }: VehicleSpace): Readonly<Record<Side, Direction>> {
  return { right, left: opposite[right], top: upward, bottom: opposite[upward] };
}

/** A route along one side of the vehicle that reaches a space at the edge towards the other side. */
const edgeOnOtherSide: Rule = {
  id: 'edge-on-other-side',
  judge: ({ job }) =>
    job.runs.flatMap((run): Verdict<'edge-on-other-side'>[] => {
      // Of several routes the one at its end reaches the space.
      const way = run.ways.find(({ route }) => route.reaches);
      if (!way?.route.reaches) return [];
      const { side, reaches } = way.route;
      const space = job.boards.find(({ spaceId }) => spaceId === reaches.space)?.space;
      if (!space || side === 'middle') return [];
      const ways = edgeDirections(space);
      if (ways[reaches.edge] !== opposite[side]) return [];
      const [edge] = sides.filter((one) => ways[one] === side);
      const [path, file] = [pointer(['routes', way.id]), 'vehicle'] as const;
      return [
        {
          level: 'caution',
          of: [reaches.space, way.id],
          message: `${way.id} runs along the ${side} of the vehicle and reaches ${reaches.space} at its ${reaches.edge} edge, which lies on the ${opposite[side]} of the vehicle: right: ${space.right}, upward: ${space.upward}`,
          remedy: `write edge: ${edge} where it reaches the space; where it does cross the vehicle, write side: middle; where the space is seen from its other side, correct its right:`,
          advice: [
            [{ path: `${path}/reaches/edge`, file, value: edge ?? '' }],
            [{ path: `${path}/side`, file, value: 'middle' }],
          ],
          file,
          path: `${path}/reaches/edge`,
        },
      ];
    }),
};

interface Box {
  readonly widthM: number;
  readonly heightM: number;
  readonly areaM2: number;
}

/** Width, height and area of the outline, by the shoelace formula. */
function boxOf({ outline }: VehicleSpace): Box {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const doubled = outline.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = outline[(k + 1) % outline.length] ?? [x, y];
    return sum + x * nextY - nextX * y;
  }, 0);
  return {
    widthM: Math.max(...xs) - Math.min(...xs),
    heightM: Math.max(...ys) - Math.min(...ys),
    areaM2: Math.abs(doubled) / 2,
  };
}

/** A space goes on beside its outline, up to all of a cargo area: air and walls may be many times those of the box. */
const least = 0.3;
const mostAir = 60;
const mostWall = 40;

type Differs = Verdict<'space-measures-differ'>;

function measured(id: string, field: 'air' | 'surface', message: string, share: number): readonly Differs[] {
  const most = field === 'air' ? mostAir : mostWall;
  if (share >= least && share <= most) return [];
  return [
    {
      level: 'caution',
      of: [`${id}.${field}`, id],
      message,
      value: share,
      limit: share < least ? least : most,
      remedy: 'check the number and its unit, and the outline and depth of the space',
      file: 'vehicle',
      path: pointer(['spaces', id, field]),
    },
  ];
}

const measuresDiffer: Rule = {
  id: 'space-measures-differ',
  judge(about) {
    return usedSpaces(about).flatMap(({ spaceId: id, space }): readonly Differs[] => {
      const { widthM, heightM, areaM2 } = boxOf(space);
      const length = lengthIn(about.job, { path: pointer(['spaces', id]), file: 'vehicle' });
      const boxM3 = areaM2 * space.depth;
      const wallM2 = 2 * areaM2 + 2 * (widthM + heightM) * space.depth;
      const { air, surface } = space;
      return [
        ...(air === undefined || boxM3 === 0
          ? []
          : measured(
              id,
              'air',
              `${id} is written with ${figure(1000 * air)} L of air, and outline and depth hold ${figure(1000 * boxM3)} L`,
              air / boxM3,
            )),
        ...(surface === undefined || wallM2 === 0
          ? []
          : measured(
              id,
              'surface',
              `${id} is written with ${figure(surface)} m2 of wall, and outline and depth have ${figure(wallM2)} m2`,
              surface / wallM2,
            )),
        ...obstaclesOutside(id, space, length),
        ...reachablesOutside(id, space, length),
      ];
    });
  },
};

/** A thing that lies in the plane of a space. */
interface Lying {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How far something reaches past the outline of its space (m); below zero within. */
function pastOutlineM({ outline }: VehicleSpace, { x, y, width, height }: Lying): number {
  const xs = outline.map(([each]) => each);
  const ys = outline.map(([, each]) => each);
  return Math.max(
    Math.min(...xs) - x,
    x + width - Math.max(...xs),
    Math.min(...ys) - y,
    y + height - Math.max(...ys),
  );
}

/** What a tape may be off before a thing counts as outside (m). */
const slackM = 0.005;

function outside(
  id: string,
  group: 'obstacles' | 'keep-reachable',
  name: string,
  message: string,
  value: number,
): Differs {
  return {
    level: 'caution',
    of: [`${id}.${name}`, id],
    message,
    value,
    limit: 0,
    unit: 'm',
    remedy: 'measure it from the lower left corner of the space, and check the unit',
    file: 'vehicle',
    path: pointer(['spaces', id, group, name]),
  };
}

function obstaclesOutside(
  id: string,
  space: VehicleSpace,
  length: (lengthM: number) => string,
): readonly Differs[] {
  return Object.entries(space.obstacles).flatMap(([name, obstacle]): Differs[] => {
    const depthM = obstacle['stands-out'] - space.depth;
    const pastM = Math.max(pastOutlineM(space, obstacle), depthM);
    if (pastM <= slackM) return [];
    const past = depthM === pastM ? 'depth' : 'outline';
    return [
      outside(
        id,
        'obstacles',
        name,
        `the obstacle ${name} reaches ${length(pastM)} past the ${past} of ${id}`,
        pastM,
      ),
    ];
  });
}

function reachablesOutside(
  id: string,
  space: VehicleSpace,
  length: (lengthM: number) => string,
): readonly Differs[] {
  return Object.entries(space['keep-reachable']).flatMap(([name, area]): Differs[] => {
    const pastM = pastOutlineM(space, area);
    if (pastM <= slackM) return [];
    return [
      outside(
        id,
        'keep-reachable',
        name,
        `what must stay reachable, ${name}, reaches ${length(pastM)} past the outline of ${id}`,
        pastM,
      ),
    ];
  });
}

export const vehicleDataRules: readonly Rule[] = [seenFromBehind, edgeOnOtherSide, measuresDiffer];
