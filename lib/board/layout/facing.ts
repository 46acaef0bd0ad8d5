import type { BoardRemark } from '../remark.ts';
import { opposite, type Side, type WireLayer } from './item.ts';
import type { PlacedItem } from './placed.ts';

/** The sides of a board that signal and power come from; left out: either side will do. */
export interface Sources {
  readonly signalSide?: Side;
  readonly powerSide?: Side;
}

/** An end of an item that faces away from where its wires come from. */
export interface EndAway {
  readonly what: 'signal' | 'power';
  readonly wanted: Side;
}

const layersOf: Readonly<Record<EndAway['what'], readonly WireLayer[]>> = {
  signal: ['signal'],
  power: ['power', 'ground'],
};

/** Quarter turns between the way a terminal faces and the side that it should face; 0 where any side will do. */
export function quartersOff(faces: Side, wanted: Side | undefined): 0 | 1 | 2 {
  if (!wanted || faces === wanted) return 0;
  return faces === opposite[wanted] ? 2 : 1;
}

/**
 * An item with ends on several sides, such as a block with its feed in here and out there, faces by its best one. What
 * shares out among the others, as a ground bar does, faces them.
 */
export function endsAway({ signalSide, powerSide }: Sources, { terminals, shares }: PlacedItem): EndAway[] {
  const away = (what: EndAway['what'], wanted: Side | undefined): EndAway[] => {
    const facing = [...terminals.values()].filter(({ layer }) => layersOf[what].includes(layer));
    const isAway = facing.length > 0 && facing.every(({ faces }) => quartersOff(faces, wanted) === 2);
    return wanted && isAway ? [{ what, wanted }] : [];
  };
  return [...away('signal', signalSide), ...(shares === null ? away('power', powerSide) : [])];
}

/** Cautions for the ends of a placed item that face away from where their wires come from. */
export function facingFaults(sources: Sources, placed: PlacedItem): BoardRemark[] {
  return endsAway(sources, placed).map(
    ({ what, wanted }): BoardRemark => ({
      rule: `${what}-end-faces-wrong-side`,
      level: 'caution',
      of: [placed.id],
      message: `${placed.id}: its ${what} end faces away from the ${wanted} of the board, where ${what} comes from`,
      value: 180,
      limit: 90,
      unit: 'deg',
      remedy: `write turn: ${(placed.turnDeg + 180) % 360} at ${placed.id}, or leave at: and turn: of it out, so that its place is proposed; or lead the wires round it`,
    }),
  );
}
