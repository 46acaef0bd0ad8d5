import { type BoardRemark, length, phrase } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import { distanceToBox, type Point } from '../shape/point.ts';
import { insideRegion } from '../shape/region.ts';
import { gapM, roomInsideM } from '../shape/ring-gap.ts';
import { missingAirOver } from './air-over.ts';
import { facingFaults, type Sources } from './facing.ts';
import { footprint } from './fit-in-space.ts';
import { type Item, onBoard, overlapM, type Placement } from './item.ts';
import { faceCoveredM, gapShortfall, type PlacedItem, place, type Shortfall, shortfalls } from './placed.ts';
import { controlsOverheadM } from './raising/stacking.ts';

/** The head of a fixing on the mounting side of a board, metres. */
export interface FixingHead extends Point {
  readonly id: string;
  readonly radiusM: number;
}

/** A board to lay out: its shape, and the sides that signal and power come from. */
export interface LayoutBoard extends Sources {
  readonly shape: BoardShape;
  /** What no part stands on; left out: the board has no fixing. */
  readonly heads?: readonly FixingHead[];
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
  rules: LayoutRules,
): readonly BoardRemark[] {
  const known = new Map(items.map((item) => [item.id, item]));
  const found = placements.flatMap((at) => {
    const item = known.get(at.item);
    return item ? [{ item, at, placed: place(item, at, rules.partGapM) }] : [];
  });
  const unknown = placements.filter(({ item }) => !known.has(item)).map(({ item }) => unknownItem(item));
  const single = found.flatMap(({ item, at, placed }) => [
    ...outlineFaults(board.shape, placed),
    ...overHoleFaults(board.shape, placed),
    ...overHeadFaults(board, placed),
    ...holeFaults(board.shape, item, at),
    ...facingFaults(board, placed),
  ]);
  const pairs = found.flatMap(({ placed }, at) =>
    found.slice(at + 1).flatMap((other) => pairFaults(placed, other.placed)),
  );
  return [...unknown, ...single, ...pairs];
}

function unknownItem(item: string): BoardRemark {
  return {
    rule: 'placement-of-nothing',
    level: 'stop',
    of: [item],
    message: `${item} has a placement, but is not among what is mounted on the board`,
    remedy: 'correct the name, or add the item',
  };
}

function outlineFaults({ region }: BoardShape, { id, body }: PlacedItem): BoardRemark[] {
  const ring = footprint(body);
  const [piece] = region;
  const insideM = piece ? roomInsideM(ring, piece.outer) : -Infinity;
  const out: BoardRemark[] =
    insideM < -1e-9
      ? [
          {
            rule: 'item-outside-board',
            level: 'stop',
            of: [id],
            message: phrase`${id} reaches ${length('overlap', -insideM)} out of the board`,
            value: -insideM,
            limit: 0,
            unit: 'm',
            remedy: 'move or turn it, or make the board larger',
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
      message: phrase`${id} stands ${length('overlap', overM)} over an opening of the board`,
      value: overM,
      limit: 0,
      unit: 'm',
      remedy: 'move it, or raise it on spacers',
    },
  ];
}

function overHoleFaults({ holes }: BoardShape, { id, body }: PlacedItem): BoardRemark[] {
  if (body.minZ > 1e-9) return [];
  return holes.flatMap((hole): BoardRemark[] => {
    const byM = hole.diameterM / 2 - distanceToBox(hole, body);
    if (byM <= 1e-9) return [];
    return [
      {
        rule: 'item-over-hole',
        level: 'caution',
        of: [id, hole.id],
        message: phrase`${id} stands ${length('overlap', byM)} over the hole ${hole.id}`,
        value: byM,
        limit: 0,
        unit: 'm',
        remedy: 'move one of them, or raise the item on spacers',
      },
    ];
  });
}

function overHeadFaults({ heads = [] }: LayoutBoard, { id, body }: PlacedItem): BoardRemark[] {
  if (body.minZ > 1e-9) return [];
  return heads.flatMap((head): BoardRemark[] => {
    const byM = head.radiusM - distanceToBox(head, body);
    if (byM <= 1e-9) return [];
    return [
      {
        rule: 'item-over-fixing',
        level: 'caution',
        of: [id, head.id],
        message: phrase`${id} stands ${length('overlap', byM)} over the head of the fixing ${head.id}`,
        value: byM,
        limit: 0,
        unit: 'm',
        remedy: 'move it, raise it on spacers, or sink the head and fasten the board before the part goes on',
      },
    ];
  });
}

function holeFaults({ region }: BoardShape, item: Item, at: Placement): BoardRemark[] {
  return (item.mountingHoles ?? [])
    .filter((hole) => !insideRegion(onBoard(item, at, hole), region))
    .map(({ id }) => ({
      rule: 'mounting-hole-off-board',
      level: 'stop',
      of: [item.id, id],
      message: `${item.id}: its mounting hole ${id} has no board behind it`,
      remedy: 'move the item, or leave the opening out',
    }));
}

function pairFaults(a: PlacedItem, b: PlacedItem): BoardRemark[] {
  const byM = overlapM(a.body, b.body);
  if (byM > 1e-9)
    return [
      {
        rule: 'items-overlap',
        level: 'stop',
        of: [a.id, b.id],
        message: phrase`${a.id} and ${b.id} stand ${length('overlap', byM)} in each other`,
        value: byM,
        limit: 0,
        unit: 'm',
        remedy: phrase`move one of them by ${length('overlap', byM)}, or raise one over the other`,
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
function raisedFaults(lower: PlacedItem, upper: PlacedItem): BoardRemark[] {
  const coveredM = controlsOverheadM(lower, upper);
  const overhead: BoardRemark[] =
    coveredM > 1e-9
      ? [
          {
            rule: 'control-under-part',
            level: 'caution',
            of: [lower.id, upper.id],
            message: phrase`${upper.id} stands ${length('overlap', coveredM)} over the room in front of the controls of ${lower.id}: a hand comes to them from the side only`,
            value: coveredM,
            limit: 0,
            unit: 'm',
            remedy: phrase`move them ${length('overlap', coveredM)} further apart, or reach in before you build: each knob must turn`,
          },
        ]
      : [];
  const air = missingAirOver(lower, upper);
  if (!air) return overhead;
  const { freeM, neededM } = air;
  return [
    ...overhead,
    {
      rule: 'air-gap-short',
      level: 'caution',
      of: [lower.id, upper.id],
      message: phrase`${lower.id}: room for air over it is ${length('room-free', freeM)} up to ${upper.id}; ${length('room-asked', neededM)} is needed`,
      value: freeM,
      limit: neededM,
      unit: 'm',
      remedy: phrase`raise ${upper.id} by ${length('room-asked', neededM - freeM)} more, or move it aside`,
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

function shortfallFault(item: string, other: string, { kind, side, freeM, neededM }: Shortfall): BoardRemark {
  const { what, ...under } = shortfallRules[kind];
  const where = side ? ` on its ${side}` : '';
  return {
    ...under,
    of: [item, other],
    message: phrase`${item}: ${what}${where} is ${length('room-free', freeM)} up to ${other}; ${length('room-asked', neededM)} is needed`,
    value: freeM,
    limit: neededM,
    unit: 'm',
    remedy: phrase`move them ${length('room-asked', neededM - freeM)} further apart`,
  };
}

function coveredFaults(a: PlacedItem, b: PlacedItem): BoardRemark[] {
  const byM = faceCoveredM(a, b);
  if (byM <= 1e-9) return [];
  return [
    {
      rule: 'face-covered',
      level: 'stop',
      of: [a.id, b.id],
      message: phrase`${b.id} stands ${length('overlap', byM)} over the face of ${a.id}, which has to be reached`,
      value: byM,
      limit: 0,
      unit: 'm',
      remedy: 'move one of them',
    },
  ];
}
