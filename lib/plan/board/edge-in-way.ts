import { outward, type Side } from '../../board/layout/item.ts';
import { type BoardRemark, length, phrase } from '../../board/remark.ts';
import { isPoint, type RouteWire } from '../../board/route/route.ts';
import { routingDefaults } from '../../board/route/routing.ts';
import { flatten } from '../../board/shape/bulge.ts';
import type { BoardShape } from '../../board/shape/outline.ts';
import { boxOf, edgesOf, type Point, type Ring } from '../../board/shape/point.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { BoardWire } from './board-wires.ts';

/** A terminal that faces an edge of the board with too little room before it for its wire to turn. */
interface ShortEnd {
  readonly item: string;
  readonly edge: Side;
  readonly roomM: number;
  readonly needM: number;
}

/** Which board is routed, and with what. */
interface RoutedOn {
  readonly board: Board;
  readonly shape: BoardShape;
  readonly wires: readonly BoardWire[];
  readonly tasks: readonly RouteWire[];
}

/**
 * The remarks of routing, with more said of a wire that nothing but the outline of the board leaves no way: which edge
 * is too near, to what, and how far out it would have to be. Lengths are rounded to the safe side.
 */
export function withEdgeInWay(
  job: Pick<Job, 'shop'>,
  faults: readonly BoardRemark[],
  on: RoutedOn,
): readonly BoardRemark[] {
  return faults.map((fault): BoardRemark => {
    const [wire, ...inWay] = fault.of;
    if (fault.rule !== 'wire-without-way' || inWay.length > 0) return fault;
    const task = on.tasks.find(({ id }) => id === wire);
    const [short] = task ? shortEnds(task, on) : [];
    return task && short ? { ...fault, ...words(job, on, task, short) } : fault;
  });
}

/** The terminals of a wire that face an edge too near, the nearest first. */
function shortEnds(task: RouteWire, { shape, wires }: RoutedOn): ShortEnd[] {
  const ring = flatten(shape.outline, 0.0005);
  const { clearanceM, pitchM } = routingDefaults;
  const clearM = task.diameterM / 2 + clearanceM;
  // Out of the terminal by its bend, then along the edge, clear of both, on the next line that wires are laid on.
  const needM = Math.max(clearM, task.bendRadiusM ?? 0) + clearM + pitchM;
  const link = wires.find((one) => one.link.id === task.id)?.link;
  const ends = [
    { end: task.from, item: link?.from.device ?? task.id },
    { end: task.to, item: link?.to.device ?? task.id },
  ];
  return ends
    .flatMap(({ end, item }): ShortEnd[] => {
      if (!isPoint(end)) return [];
      const roomM = roomAheadM(ring, end, outward[end.faces]);
      return roomM < needM - 1e-9 ? [{ item, edge: end.faces, roomM, needM }] : [];
    })
    .toSorted((a, b) => a.roomM - b.roomM);
}

/** From a point straight ahead to the first line of a ring, metres; infinite where there is none. */
function roomAheadM(ring: Ring, from: Point, to: Point): number {
  const along = (p: Point): number => (p.xM - from.xM) * to.xM + (p.yM - from.yM) * to.yM;
  const beside = (p: Point): number => (p.xM - from.xM) * -to.yM + (p.yM - from.yM) * to.xM;
  const met = edgesOf(ring).flatMap(([a, b]): number[] => {
    const [left, right] = [beside(a), beside(b)];
    if (left === right || Math.sign(left) === Math.sign(right)) return [];
    const aheadM = along(a) + ((along(b) - along(a)) * left) / (left - right);
    return aheadM >= 0 ? [aheadM] : [];
  });
  return Math.min(Number.POSITIVE_INFINITY, ...met);
}

function words(
  { shop: { units, fraction } }: Pick<Job, 'shop'>,
  { board, shape }: RoutedOn,
  { id, diameterM }: RouteWire,
  { item, edge, roomM, needM }: ShortEnd,
): Pick<BoardRemark, 'message' | 'remedy' | 'advice'> {
  const { minX, maxX, minY, maxY } = boxOf(shape.outline);
  const [field, spanM] =
    edge === 'left' || edge === 'right' ? ['width', maxX - minX] : ['height', maxY - minY];
  const stepM = units === 'inch' ? 0.0254 / fraction : 0.001;
  const widerM = Math.ceil((spanM + needM - roomM) / stepM - 1e-9) * stepM;
  const value = tapeText(widerM, units);
  const lacking = length('room-asked', needM - roomM);
  const isFar = edge === 'right' || edge === 'top';
  const also = isFar ? '' : ', with at: of the board and of all that stands on it moved by as much';
  const isRectangle = isFar && board.given.outline.rectangle !== undefined;
  return {
    message: phrase`${id}: no way is left for ${length('size', diameterM)} of wire between ${item} and the ${edge} edge of the board: ${length('room-free', roomM)} is free, ${length('room-asked', needM)} is needed`,
    remedy: phrase`move ${item} ${lacking} further from that edge or turn it; or move the edge out, where the space allows it: write ${field}: ${value} of the outline of ${board.id}${also}`,
    ...(isRectangle && {
      advice: [[{ path: `${board.path}/outline/rectangle/${field}`, value }]],
    }),
  };
}
