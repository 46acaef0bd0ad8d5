import { type Side, sides } from '../board/layout/item.ts';
import type { Box, Point, Ring } from '../board/shape/point.ts';
import type { WarmCavity } from '../heat/cavity-air.ts';
import { coolingSurface } from '../heat/cooling-surface.ts';
import type { Shop } from '../model/content/shop.ts';
import type { Vehicle } from '../model/content/vehicle.ts';
import type { VehicleSpace } from '../model/content/vehicle-space.ts';
import type { HouseRules } from '../model/house-rules.ts';
import { type Part, partFacts } from '../model/kinds/index.ts';
import { type WorkTimeName, workMinutes, workTimeNames } from '../model/work-times.ts';
import { ambientRules } from '../model/zone-ambient.ts';
import { boxOfSpace } from '../plan/power/space-heat.ts';
import { sortOf } from './past-board.ts';
import { ratedDrawA } from './rated-draw.ts';

/** What stands before the mounting plane of a space, or has to be reached there: from the plane on so far out, metres. */
export interface InTheWay {
  readonly id: string;
  readonly at: Box;
  readonly toM: number;
}

/** A space that a board is wanted for, metres, in its own axes. Plain data. */
export interface WishedSpace {
  readonly vehicle: string;
  readonly id: string;
  readonly title: string;
  readonly outline: Ring;
  readonly depthM: number;
  readonly inTheWay: readonly InTheWay[];
  /** Where a fixing may be driven in. */
  readonly soundPoints: readonly (Point & { readonly id: string })[];
  /** Sides on which nothing bounds it, so that a hand, a tool or a plug comes in. */
  readonly open: readonly Side[];
  /** The edges that ways for wires reach; none where no way says so. */
  readonly reached: readonly Side[];
  /** How it loses heat. */
  readonly cavity: Omit<WarmCavity, 'lossW'>;
}

/** A part that is to stand on the board. Metres, before any turn. */
export interface WishedPart {
  readonly part: string;
  readonly kind: string;
  /** What it may stand in the place of. */
  readonly sort: string;
  readonly widthM: number;
  readonly depthM: number;
  readonly heightM: number;
  readonly holes: readonly Point[];
  /** Conductors, pairs and leads that end at it. */
  readonly wires: number;
  /** What it draws at rated power as it is planned (A); null where nothing is planned yet: a part of a past board draws what it drew there. */
  readonly plannedA: number | null;
  /** What it draws when every channel gives the most that its maker publishes (A). */
  readonly mostA: number;
}

/** What a shop asks and how long it takes for a piece of work. */
export interface LikeRules {
  readonly clearanceM: number;
  readonly partGapM: number;
  readonly holeEdgeM: number;
  /** A fuse is chosen so many times above the current that it carries. */
  readonly fuseMargin: number;
  readonly minutes: Readonly<Record<WorkTimeName, number>>;
  /** The warmest air that a part bears (C), by the part; what has no heat of its own and a silent maker is left out. */
  readonly bearsC: Readonly<Record<string, number>>;
}

/** What a board is wanted for. */
export interface Wish {
  readonly space: WishedSpace;
  /** Null where none are told: every part of a past board stays. */
  readonly parts: readonly WishedPart[] | null;
  readonly rules: LikeRules;
}

/** What must not be drilled into. */
const undrillable: ReadonlySet<string> = new Set(['tank', 'line', 'airbag']);

/** A space of a vehicle as a wish; `rules` as they hold in the vehicle. */
export function wishedSpace(
  vehicle: Vehicle,
  id: string,
  space: VehicleSpace,
  rules: HouseRules,
): WishedSpace {
  const box = (x: number, y: number, width: number, height: number): Box => {
    return { minX: x, minY: y, maxX: x + width, maxY: y + height };
  };
  const reached = Object.values(vehicle.routes).flatMap(({ reaches }) =>
    reaches?.space === id ? [reaches.edge] : [],
  );
  const walls = { box: boxOfSpace(space), airM3: space.air ?? null, surfaceM2: space.surface ?? null };
  return {
    ...{ vehicle: vehicle.id, id, title: space.title, depthM: space.depth },
    outline: space.outline.map(([xM, yM]) => ({ xM, yM })),
    inTheWay: [
      ...Object.entries(space.obstacles).map(([name, one]) => ({
        id: name,
        at: box(one.x, one.y, one.width, one.height),
        toM: one['stands-out'],
      })),
      ...Object.entries(space['keep-reachable'])
        .filter(([, { must }]) => must)
        .map(([name, one]) => ({ id: name, at: box(one.x, one.y, one.width, one.height), toM: one.before })),
    ],
    soundPoints: Object.entries(space['sound-points'])
      .filter(([, { behind }]) => !undrillable.has(behind))
      .map(([name, { x, y }]) => ({ id: name, xM: x, yM: y })),
    open: sides.filter((side) => space.bounds[side] === 'open'),
    reached: sides.filter((side) => reached.includes(side)),
    cavity: {
      outsideC: rules[ambientRules[space.zone]].value,
      surfaceM2: coolingSurface(walls).value,
      passesWM2K: rules['cavity-passes'].value,
      fanM3S: space.fan?.there ? space.fan.air : 0,
      openings: space.openings.map(({ width, height }) => ({ widthM: width, heightM: height })),
    },
  };
}

/** A part of the catalogue as it is wanted on a board; null for one that can't stand there: it has no size. */
export function wishedPart(id: string, part: Part, rules: HouseRules): WishedPart | null {
  const { footprint, terminals } = partFacts(part);
  if (!footprint) return null;
  return {
    ...{ part: id, kind: part.kind },
    sort: sortOf(
      part.kind,
      Object.values(terminals).map(({ role }) => role),
    ),
    ...{ widthM: footprint.widthM, depthM: footprint.depthM, heightM: footprint.heightM },
    holes: [...footprint.holes, ...footprint.bracketHoles].map(({ xM, yM }) => ({ xM, yM })),
    wires: Object.keys(terminals).filter((name) => !name.endsWith('-')).length,
    plannedA: null,
    mostA: ratedDrawA(part, rules),
  };
}

/** What has heat of its own to lose, and counts by the house rule where its maker is silent. */
const electronics: ReadonlySet<string> = new Set(['amplifier', 'processor', 'source-unit', 'charger']);

/** What a shop asks of a board; `rules` as they hold in the vehicle. */
export function likeRules(
  shop: Pick<Shop, 'times'>,
  parts: Readonly<Record<string, Part>>,
  rules: HouseRules,
): LikeRules {
  const minutes: Partial<Record<WorkTimeName, number>> = {};
  for (const name of workTimeNames) minutes[name] = workMinutes(shop.times, name).minutes;
  return {
    clearanceM: rules['space-clearance'].value,
    partGapM: Math.max(rules['gap-parts'].value, rules['part-tolerance'].value),
    holeEdgeM: rules['hole-edge'].value,
    fuseMargin: rules['fuse-margin'].value,
    minutes: whole(minutes),
    bearsC: Object.fromEntries(
      Object.entries(parts).flatMap(([id, part]) => {
        const own = 'most-ambient' in part ? part['most-ambient'] : undefined;
        const bears = own ?? (electronics.has(part.kind) ? rules['most-ambient'].value : undefined);
        return bears === undefined ? [] : [[id, bears] as const];
      }),
    ),
  };
}

function whole(minutes: Partial<Record<WorkTimeName, number>>): LikeRules['minutes'] {
  if (isWhole(minutes)) return minutes;
  throw new Error('A piece of work has no time.');
}

function isWhole(minutes: Partial<Record<WorkTimeName, number>>): minutes is Record<WorkTimeName, number> {
  return workTimeNames.every((name) => minutes[name] !== undefined);
}
