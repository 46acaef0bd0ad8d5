import type { Vehicle } from '../../model/content/vehicle.ts';
import { findingCatalogue } from '../../model/findings/index.ts';
import { isMounted, isOnReel, type KindName, type Part } from '../../model/kinds/index.ts';
import { ifThen } from '../../model/writing/if-then.ts';
import type { OpenShop } from '../../read/read-content.ts';
import {
  anyName,
  atWays,
  type JsonSchema,
  oneOfNames,
  oneOrRow,
  oneOrSeveral,
  type SchemaAt,
} from './json-schema.ts';

/** The names that the files of a shop give, which its other files use. */
export interface ShopNames {
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
  /** Names of what stands there, but could not be read. */
  readonly unreadParts: readonly string[];
  readonly unreadVehicles: readonly string[];
  /** True where a file of parts could not be read at all: it may give any name. */
  readonly hasUnreadFile: boolean;
}

/** The names that a shop gives as it was read. */
export function namesOfShop({
  parts,
  vehicles,
  unread,
}: Pick<OpenShop, 'parts' | 'vehicles' | 'unread'>): ShopNames {
  const [ofParts, ofVehicles] = [unread.of('part'), unread.of('vehicle')];
  return {
    ...{ parts, vehicles },
    unreadParts: ofParts.names,
    unreadVehicles: ofVehicles.names,
    hasUnreadFile: ofParts.isAny,
  };
}

/** Where a job names a part, and of which kinds it may be. */
const jobParts: readonly (readonly [way: string, kinds: readonly KindName[] | 'equipment'])[] = [
  ['devices/*/part', 'equipment'],
  ['devices/*/box', ['enclosure']],
  ['cables/*/part', ['cable']],
  ['links/*/wire', ['wire']],
  ['runs/*/covering', ['covering']],
  ['boards/*/sheet', ['board-sheet']],
  ['boards/*/screw', ['fixing']],
  ['boards/*/ribs/*/sheet', ['board-sheet']],
  ['boards/*/fixings/*/fixing', ['fixing']],
];

/** The names that a job may use of its shop, and of each vehicle where it is of that vehicle. */
export function namesInJob(names: ShopNames): JsonSchema {
  const vehicles = [...Object.keys(names.vehicles), ...names.unreadVehicles].sort();
  return {
    allOf: [
      atWays([
        place('vehicle', oneOfNames(vehicles)),
        place('accepted/[]/finding', oneOfNames(Object.keys(findingCatalogue).sort())),
        ...jobParts.map(([way, kinds]) => place(way, partsOf(names, kinds))),
      ]),
      ...Object.entries(names.vehicles).map(([id, vehicle]) =>
        ifThen({ required: ['vehicle'], properties: { vehicle: { const: id } } }, namesOfVehicle(vehicle)),
      ),
    ],
  };
}

function namesOfVehicle({ spaces, places, routes, grounds }: Vehicle): JsonSchema {
  const space = oneOfNames(Object.keys(spaces));
  const seat = oneOfNames(Object.keys(places));
  const ground = oneOfNames(Object.keys(grounds));
  const points = Object.values(spaces).flatMap((one) => Object.keys(one['sound-points']));
  return atWays([
    place('space', space),
    place('boards/*/space', space),
    place('boards/*/ground', ground),
    place('boards/*/fixings/*/point', oneOrRow([...new Set(points)])),
    place('devices/*/in', oneOrSeveral(seat)),
    place('devices/*/cools', space),
    place('devices/*/ground', ground),
    place('runs/*/route', oneOrSeveral(oneOfNames(Object.keys(routes)))),
  ]);
}

/** The names that a vehicle may use of its shop. */
export function namesInVehicle(names: ShopNames): JsonSchema {
  return atWays([place('fitted/*/part', partsOf(names, 'any'))]);
}

/** What a shop may keep in stock, and how: by the piece, or on the reel. */
export function namesInShop(names: ShopNames): JsonSchema {
  return atWays([
    place('stock', { propertyNames: partsOf(names, 'any') }),
    place('prices', { propertyNames: partsOf(names, 'any') }),
    ...Object.entries(names.parts).map(([id, part]): SchemaAt => {
      return [['stock', id], { required: [isOnReel(part) ? 'reels' : 'pieces'] }];
    }),
  ]);
}

/** A way as it is written here: its steps parted by strokes. */
function place(way: string, schema: JsonSchema): SchemaAt {
  return [way.split('/'), schema];
}

function partsOf(
  { parts, unreadParts, hasUnreadFile }: ShopNames,
  kinds: readonly KindName[] | 'equipment' | 'any',
): JsonSchema {
  const fits = (part: Part): boolean =>
    kinds === 'any' || (kinds === 'equipment' ? isMounted(part) : kinds.includes(part.kind));
  const fitting = Object.entries(parts).flatMap(([id, part]) => (fits(part) ? [id] : []));
  const all = [...new Set([...fitting, ...unreadParts])].sort();
  return hasUnreadFile ? anyName(all) : oneOfNames(all);
}
