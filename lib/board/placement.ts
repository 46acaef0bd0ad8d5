import { boardDefaults } from './defaults.ts';
import { type BoardFault, commonPractice, geometry, mmText } from './fault.ts';
import { footprint } from './fit.ts';
import { type Item, onBoard, opposite, overlapM, type Placement, type Side } from './item.ts';
import type { BoardShape } from './outline.ts';
import {
  faceCoveredM,
  gapShortfall,
  type PlacedItem,
  place,
  planGapM,
  type Shortfall,
  sameHeight,
  shortfalls,
} from './placed.ts';
import { distanceToBox } from './point.ts';
import { insideRegion } from './region.ts';
import { gapM, roomInsideM } from './ring-gap.ts';
import { controlsCoveredM } from './stacking.ts';

/** A board to lay out: its shape, and the sides that signal and power come from; left out: either side will do. */
export interface LayoutBoard {
  readonly shape: BoardShape;
  readonly signalSide?: Side;
  readonly powerSide?: Side;
}

/** The house's figures for a layout, metres. */
export interface LayoutRules {
  readonly partGapM: number;
  readonly powerToSignalM: number;
}

/**
 * Checks placements: each item inside the outline and off its openings, its mounting holes in material, no
 * two in each other (in three dimensions), air gaps, room for tools, plugs and bends, controls reachable,
 * and signal and power ends facing their sides of the board. Every fault has its amount in metres.
 */
export function checkPlacements(
  board: LayoutBoard,
  items: readonly Item[],
  placements: readonly Placement[],
  rules: LayoutRules = boardDefaults,
): readonly BoardFault[] {
  const known = new Map(items.map((item) => [item.id, item]));
  const found = placements.flatMap((at) => {
    const item = known.get(at.item);
    return item ? [{ item, at, placed: place(item, at, rules.partGapM) }] : [];
  });
  const unknown = placements.filter(({ item }) => !known.has(item)).map(({ item }) => unknownItem(item));
  const single = found.flatMap(({ item, at, placed }) => [
    ...outlineFaults(board.shape, placed),
    ...overHoleFaults(board.shape, placed),
    ...holeFaults(board.shape, item, at),
    ...facingFaults(board, placed),
  ]);
  const pairs = found.flatMap(({ placed }, at) =>
    found.slice(at + 1).flatMap((other) => pairFaults(placed, other.placed)),
  );
  return [...unknown, ...single, ...pairs];
}

function unknownItem(item: string): BoardFault {
  return {
    rule: 'placement-of-nothing',
    level: 'stop',
    of: [item],
    message: `${item} has a placement, but is not among what is mounted on the board`,
    remedy: 'correct the name, or add the item',
    ...geometry,
  };
}

function outlineFaults({ region }: BoardShape, { id, body }: PlacedItem): BoardFault[] {
  const ring = footprint(body);
  const [piece] = region;
  const insideM = piece ? roomInsideM(ring, piece.outer) : -Infinity;
  const out: BoardFault[] =
    insideM < -1e-9
      ? [
          {
            rule: 'item-outside-board',
            level: 'stop',
            of: [id],
            message: `${id} reaches ${mmText(-insideM)} out of the board`,
            value: -insideM,
            limit: 0,
            unit: 'm',
            remedy: 'move or turn it, or make the board larger',
            ...geometry,
          },
        ]
      : [];
  const over = piece && body.minZ < 1e-9 ? piece.openings.map((opening) => -gapM(ring, opening)) : [];
  const overM = Math.max(0, ...over);
  if (overM < 1e-9) return out;
  return [
    ...out,
    {
      rule: 'item-over-opening',
      level: 'caution',
      of: [id],
      message: `${id} stands ${mmText(overM)} over an opening of the board`,
      value: overM,
      limit: 0,
      unit: 'm',
      remedy: 'move it, or raise it on spacers',
      ...geometry,
    },
  ];
}

function overHoleFaults({ holes }: BoardShape, { id, body }: PlacedItem): BoardFault[] {
  if (body.minZ > 1e-9) return [];
  return holes.flatMap((hole): BoardFault[] => {
    const byM = hole.diameterM / 2 - distanceToBox(hole, body);
    if (byM <= 1e-9) return [];
    return [
      {
        rule: 'item-over-hole',
        level: 'caution',
        of: [id, hole.id],
        message: `${id} stands ${mmText(byM)} over the hole ${hole.id}`,
        value: byM,
        limit: 0,
        unit: 'm',
        remedy: 'move one of them, or raise the item on spacers',
        ...geometry,
      },
    ];
  });
}

function holeFaults({ region }: BoardShape, item: Item, at: Placement): BoardFault[] {
  return (item.mountingHoles ?? [])
    .filter((hole) => !insideRegion(onBoard(item, at, hole), region))
    .map(({ id }) => ({
      rule: 'mounting-hole-off-board',
      level: 'stop',
      of: [item.id, id],
      message: `${item.id}: its mounting hole ${id} has no board behind it`,
      remedy: 'move the item, or leave the opening out',
      ...geometry,
    }));
}

/** Quarter turns between the way a terminal faces and the side that it should face; 0 where any side will do. */
export function quartersOff(faces: Side, wanted: Side | undefined): 0 | 1 | 2 {
  if (!wanted || faces === wanted) return 0;
  return faces === opposite[wanted] ? 2 : 1;
}

/** An item with ends on several sides, such as a block with its feed in here and out there, faces by its best one. */
function facingFaults(board: LayoutBoard, { id, terminals }: PlacedItem): BoardFault[] {
  const ends = [
    { what: 'signal', layers: ['signal'], wanted: board.signalSide },
    { what: 'power', layers: ['power', 'ground'], wanted: board.powerSide },
  ];
  return ends.flatMap(({ what, layers, wanted }): BoardFault[] => {
    const facing = [...terminals.values()].filter(({ layer }) => layers.includes(layer));
    const quarters = Math.min(...facing.map(({ faces }) => quartersOff(faces, wanted)));
    if (facing.length === 0 || quarters < 2) return [];
    return [
      {
        rule: `${what}-end-faces-wrong-side`,
        level: 'caution',
        of: [id],
        message: `${id}: its ${what} end faces away from the ${wanted} of the board, where ${what} comes from`,
        value: quarters * 90,
        limit: 90,
        unit: 'deg',
        remedy: 'turn it, or lead the wires round it',
        ...commonPractice,
      },
    ];
  });
}

function pairFaults(a: PlacedItem, b: PlacedItem): BoardFault[] {
  const byM = overlapM(a.body, b.body);
  if (byM > 1e-9)
    return [
      {
        rule: 'items-overlap',
        level: 'stop',
        of: [a.id, b.id],
        message: `${a.id} and ${b.id} stand ${mmText(byM)} in each other`,
        value: byM,
        limit: 0,
        unit: 'm',
        remedy: `move one of them by ${mmText(byM)}, or raise one over the other`,
        ...geometry,
      },
    ];
  const gap = gapShortfall(a, b);
  return [
    ...(gap ? [shortfallFault(a.id, b.id, gap)] : []),
    ...shortfalls(a, b).map((shortfall) => shortfallFault(a.id, b.id, shortfall)),
    ...shortfalls(b, a).map((shortfall) => shortfallFault(b.id, a.id, shortfall)),
    ...coveredFaults(a, b),
    ...coveredFaults(b, a),
    ...raisedFaults(a, b),
    ...raisedFaults(b, a),
  ];
}

/** What a part that stands higher takes of one below it: the way of a hand from above, and air over what is cooled. */
function raisedFaults(lower: PlacedItem, upper: PlacedItem): BoardFault[] {
  const isOver = planGapM(lower.body, upper.body) < -1e-9;
  const coveredM = controlsCoveredM(lower, upper);
  // At the same height the room in front of the controls is judged by itself.
  const overhead: BoardFault[] =
    coveredM > 1e-9 && !sameHeight(lower.body, upper.body)
      ? [
          {
            rule: 'control-under-part',
            level: 'caution',
            of: [lower.id, upper.id],
            message: `${upper.id} stands ${mmText(coveredM)} over the room in front of the controls of ${lower.id}: a hand comes to them from the side only`,
            value: coveredM,
            limit: 0,
            unit: 'm',
            remedy: `move them ${mmText(coveredM)} further apart, or reach in before you build: each knob must turn`,
            ...commonPractice,
          },
        ]
      : [];
  const neededM = Math.max(0, ...Object.values(lower.rooms).map(({ airM = 0 }) => airM));
  const freeM = upper.body.minZ - lower.body.maxZ;
  if (!isOver || freeM < -1e-9 || freeM >= neededM - 1e-9) return overhead;
  return [
    ...overhead,
    {
      rule: 'air-gap-short',
      level: 'caution',
      of: [lower.id, upper.id],
      message: `${lower.id}: room for air over it is ${mmText(freeM)} up to ${upper.id}; ${mmText(neededM)} is needed`,
      value: freeM,
      limit: neededM,
      unit: 'm',
      remedy: `raise ${upper.id} by ${mmText(neededM - freeM)} more, or move it aside`,
      ...commonPractice,
    },
  ];
}

const shortfallRules = {
  gapM: { rule: 'part-gap-short', level: 'caution', what: 'room to the next part' },
  airM: { rule: 'air-gap-short', level: 'caution', what: 'room for air' },
  accessM: { rule: 'control-covered', level: 'stop', what: 'room for a hand' },
  toolM: { rule: 'control-covered', level: 'stop', what: 'straight room for a tool' },
  bendM: { rule: 'bend-room-short', level: 'caution', what: 'room for plugs and bends' },
} as const;

function shortfallFault(item: string, other: string, { kind, side, freeM, neededM }: Shortfall): BoardFault {
  const { rule, level, what } = shortfallRules[kind];
  const where = side ? ` on its ${side}` : '';
  return {
    rule,
    level,
    of: [item, other],
    message: `${item}: ${what}${where} is ${mmText(freeM)} up to ${other}; ${mmText(neededM)} is needed`,
    value: freeM,
    limit: neededM,
    unit: 'm',
    remedy: `move them ${mmText(neededM - freeM)} further apart`,
    ...commonPractice,
  };
}

function coveredFaults(a: PlacedItem, b: PlacedItem): BoardFault[] {
  const byM = faceCoveredM(a, b);
  if (byM <= 1e-9) return [];
  return [
    {
      rule: 'face-covered',
      level: 'stop',
      of: [a.id, b.id],
      message: `${b.id} stands ${mmText(byM)} over the face of ${a.id}, which has to be reached`,
      value: byM,
      limit: 0,
      unit: 'm',
      remedy: 'move one of them',
      ...geometry,
    },
  ];
}
