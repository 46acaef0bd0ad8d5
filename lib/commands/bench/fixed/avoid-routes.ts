import { opposite, type Side } from '../../../board/layout/item.ts';
import { isPoint, outFrom, type Route, type RouteEnd, routeThrough } from '../../../board/route/route.ts';
import type { RoutingTask } from '../../../board/route/routing.ts';
import { wallsOf } from '../../../board/route/walls.ts';
import { type Box, type Point, pointToRing, ringOfBox } from '../../../board/shape/point.ts';

/** Lays the wires of a board by libavoid: past the same parts, from the same terminals, out where our own routes leave. */
export type AvoidRouter = (task: RoutingTask, own: readonly Route[]) => readonly Route[];

/** Opens libavoid-js, which only a development install has; null where it is missing. */
export async function openAvoid(): Promise<AvoidRouter | null> {
  const found = await import('libavoid-js').catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ERR_MODULE_NOT_FOUND') return null;
    throw error;
  });
  if (!found) return null;
  await found.AvoidLib.load();
  const avoid = found.AvoidLib.getInstance();
  return (task, own) => new AvoidBoard(avoid, task).lay(own);
}

type Avoid = ReturnType<typeof import('libavoid-js')['AvoidLib']['getInstance']>;

/** Its own figures are tuned to lines some units apart: millimetres. */
const mm = 1000;
/** Room that it keeps from what lines pass, and wants between them (m): it knows no thickness. */
const [roomM, apartM] = [0.004, 0.008];
/** What it is told that a bend and a crossing cost (mm). */
const [bendMm, crossingMm] = [50, 200];

/** Its shapes and lines for one board. */
class AvoidBoard {
  readonly #avoid: Avoid;
  readonly #task: RoutingTask;
  readonly #router;
  readonly #parts: { readonly box: Box; readonly shape: InstanceType<Avoid['ShapeRef']> }[] = [];
  #pins = 0;

  constructor(avoid: Avoid, task: RoutingTask) {
    [this.#avoid, this.#task] = [avoid, task];
    this.#router = new avoid.Router(avoid.OrthogonalRouting);
    this.#router.setRoutingParameter(avoid.segmentPenalty, bendMm);
    this.#router.setRoutingParameter(avoid.crossingPenalty, crossingMm);
    this.#router.setRoutingParameter(avoid.shapeBufferDistance, roomM * mm);
    this.#router.setRoutingParameter(avoid.idealNudgingDistance, apartM * mm);
    this.#router.setRoutingOption(avoid.nudgeOrthogonalTouchingColinearSegments, true);
    const { boxes, edges } = wallsOf(task.shape, task.barriers);
    for (const box of boxes) this.#parts.push({ box, shape: this.#shape(box) });
    for (const { a, b } of edges) this.#shape(edgeBox(a, b));
  }

  lay(own: readonly Route[]): readonly Route[] {
    const lines = this.#task.wires.flatMap((wire) => {
      const points = own.find((route) => route.wire === wire.id)?.points ?? [];
      const [first, last] = [points[0], points.at(-1)];
      if (!first || !last) return [];
      const line = new this.#avoid.ConnRef(
        this.#router,
        this.#end(wire.from, first),
        this.#end(wire.to, last),
      );
      return [{ wire, line, first, last }];
    });
    this.#router.processTransaction();
    return lines.flatMap(({ wire, line, first, last }) => {
      const way = line.displayRoute();
      const inner = Array.from({ length: way.size() }, (_, at): Point => {
        const { x, y } = way.get_ps(at);
        return { xM: x / mm, yM: y / mm };
      });
      const points = [first, ...inner, last];
      // Where it finds no way, its line goes straight across all.
      return points.every((p, nth) => isSquare(points[nth - 1] ?? p, p)) ? [routeThrough(wire, points)] : [];
    });
  }

  #point({ xM, yM }: Point) {
    return new this.#avoid.Point(xM * mm, yM * mm);
  }

  #shape({ minX, minY, maxX, maxY }: Box) {
    const [low, high] = [this.#point({ xM: minX, yM: minY }), this.#point({ xM: maxX, yM: maxY })];
    return new this.#avoid.ShapeRef(this.#router, new this.#avoid.Rectangle(low, high));
  }

  /** A terminal is a pin of its part, which a line leaves straight; an exit is a point before the edge. */
  #end(end: RouteEnd, at: Point) {
    const { ConnEnd, ShapeConnectionPin } = this.#avoid;
    if (!isPoint(end)) return new ConnEnd(this.#point(outFrom(at, opposite[end.exit], roomM + 0.0005)));
    const part = this.#parts.find(({ box }) => pointToRing(at, ringOfBox(box)) < 1e-6);
    if (!part) return new ConnEnd(this.#point(outFrom(at, end.faces, roomM + 0.0005)));
    const { minX, minY, maxX, maxY } = part.box;
    const [x, y] = [(at.xM - minX) / (maxX - minX), (at.yM - minY) / (maxY - minY)];
    this.#pins += 1;
    new ShapeConnectionPin(part.shape, this.#pins, x, y, true, 0, this.#way(end.faces));
    return new ConnEnd(part.shape, this.#pins);
  }

  /** Its y runs down. */
  #way(side: Side): number {
    const { ConnDirUp, ConnDirDown, ConnDirLeft, ConnDirRight } = this.#avoid;
    return { right: ConnDirRight, top: ConnDirDown, left: ConnDirLeft, bottom: ConnDirUp }[side];
  }
}

function isSquare(a: Point, b: Point): boolean {
  return Math.min(Math.abs(a.xM - b.xM), Math.abs(a.yM - b.yM)) < 1e-6;
}

/** An edge of the board as a thin box. */
function edgeBox(a: Point, b: Point): Box {
  const thinM = 0.0001;
  return {
    minX: Math.min(a.xM, b.xM) - thinM,
    maxX: Math.max(a.xM, b.xM) + thinM,
    minY: Math.min(a.yM, b.yM) - thinM,
    maxY: Math.max(a.yM, b.yM) + thinM,
  };
}
