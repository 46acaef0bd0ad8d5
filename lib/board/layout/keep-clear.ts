import { type Item, type Placement, type Side, type SideRoom, sides, turnedSide } from './item.ts';
import { type RoomKind, roomKinds } from './placed.ts';

/** Room in front of one side of a placed item that must stay clear. */
export interface ClearRoom {
  readonly kind: RoomKind;
  /** As it faces on the board. */
  readonly side: Side;
  /** Outwards from the side, along the whole of it, metres. */
  readonly depthM: number;
}

/** The rooms that an item keeps clear where it stands, by the side that faces there; those of no depth are left out. */
export function clearRooms(item: Item, at: Placement): readonly ClearRoom[] {
  return sides.flatMap((side) => {
    const room: SideRoom = item.rooms[side] ?? {};
    return roomKinds.flatMap((kind): ClearRoom[] => {
      const depthM = room[kind] ?? 0;
      return depthM > 0 ? [{ kind, side: turnedSide(side, at.turnDeg), depthM }] : [];
    });
  });
}
