import type { Shop } from '../model/content/shop.ts';
import type { Vehicle } from '../model/content/vehicle.ts';
import type { HouseRules } from '../model/house-rules.ts';
import type { Part } from '../model/kinds/index.ts';
import { readHouseRules, rulesInVehicle } from '../read/read-house-rules.ts';
import { asTurned, type PastBoard, type PastItem } from './past-board.ts';
import { likeRules, type Wish, type WishedPart, wishedPart, wishedSpace } from './wish.ts';

/** What a shop has, as far as a wish is made of it. */
export interface LikeShop {
  readonly shop: Pick<Shop, 'rules' | 'times'>;
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
}

/** What is wanted for a space of a vehicle; null where the shop has no such vehicle or space. */
export function wishFor(
  { shop, parts, vehicles }: LikeShop,
  { vehicle: vehicleId, space: spaceId }: Pick<PastBoard, 'vehicle' | 'space'>,
  partsOf: (rules: HouseRules) => readonly WishedPart[] | null,
): Wish | null {
  const vehicle = Object.hasOwn(vehicles, vehicleId) ? vehicles[vehicleId] : undefined;
  const space = vehicle && Object.hasOwn(vehicle.spaces, spaceId) ? vehicle.spaces[spaceId] : undefined;
  if (!vehicle || !space) return null;
  const rules = rulesInVehicle(readHouseRules(shop.rules), vehicle);
  return {
    space: wishedSpace(vehicle, spaceId, space, rules),
    parts: partsOf(rules),
    rules: likeRules(shop, parts, rules),
  };
}

/** What a planned board carries, as wanted on another: it draws what it is planned to draw. */
export function wishOfBoard(shop: LikeShop, board: PastBoard): Wish | null {
  return wishFor(shop, board, (rules) => board.items.map((item) => wantedAgain(item, shop.parts, rules)));
}

function wantedAgain(item: PastItem, parts: LikeShop['parts'], rules: HouseRules): WishedPart {
  const part = Object.hasOwn(parts, item.part) ? parts[item.part] : undefined;
  const wished = part ? wishedPart(item.part, part, rules) : null;
  return wished ? { ...wished, plannedA: item.drawA ?? 0 } : asItStands(item);
}

/** A part that the catalogue does not have any more, as it stands on the board. */
function asItStands({ part, kind, sort, at, turnDeg, heightM, drawA }: PastItem): WishedPart {
  const { xM, yM } = asTurned({ widthM: at.maxX - at.minX, depthM: at.maxY - at.minY }, turnDeg);
  return {
    ...{ part, kind, sort, widthM: xM, depthM: yM, heightM },
    ...{ holes: [], wires: 0, plannedA: drawA ?? 0, mostA: drawA ?? 0 },
  };
}
