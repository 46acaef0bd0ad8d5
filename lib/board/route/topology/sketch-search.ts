import type { MapWire, WayCosts } from './map-wire.ts';
import { type Sketch, stretchesEach, type Way } from './sketch.ts';
import { crowdingM, WaySearch } from './way-search.ts';

/** How often every wire is taken up and laid anew, at most. */
const mostPasses = 12;

/** Lays wires in a sketch, each by the way that costs least beside the others. */
export class SketchSearch {
  searches = 0;
  readonly #wires: readonly MapWire[];
  readonly #costs: WayCosts;
  readonly #ways = new WaySearch();

  constructor(wires: readonly MapWire[], costs: WayCosts) {
    this.#wires = wires;
    this.#costs = costs;
  }

  /** Takes up each of some wires in turn and lays it where it costs least: how many lie better than before. */
  layAnew(sketch: Sketch, wires: readonly number[]): number {
    let better = 0;
    for (const wire of wires) {
      const own = this.#wires[wire];
      if (!own) continue;
      const most = sketch.wayOf(wire) ? this.#costOf(sketch, wire) - 1e-9 : Infinity;
      const old = sketch.takeUp(wire);
      this.searches += 1;
      const way = this.#ways.find(sketch, own, this.#costs, most);
      const lies = way ?? old;
      if (way) better += 1;
      if (lies) sketch.lay(wire, lies);
    }
    return better;
  }

  /** Lays all wires anew until none lies better than before. */
  settle(sketch: Sketch, wires: readonly number[]): void {
    for (let pass = 0; pass < mostPasses && this.layAnew(sketch, wires) > 0; pass += 1);
  }

  /** What the way of a wire costs as the others lie now. */
  #costOf(sketch: Sketch, wire: number): number {
    const [way, own] = [sketch.wayOf(wire), this.#wires[wire]];
    if (!way || !own) return Infinity;
    const inner = 'edge' in own.to ? way.edges.slice(1, -1) : way.edges.slice(1);
    const lying = { widthM: 0, avoidM: own.avoidM };
    const fullM = inner.reduce((sum, edge) => sum + crowdingM(sketch, edge, lying, this.#costs), 0);
    return way.bareM + crossedBy(sketch, wire, way) * this.#costs.crossingM + fullM;
  }
}

function crossedBy(sketch: Sketch, wire: number, way: Way): number {
  return way.cells.reduce((sum, cell, at) => sum + crossedIn(sketch, cell, wire * stretchesEach + at), 0);
}

/** How many stretches alternate with one round a cell. */
function crossedIn(sketch: Sketch, cell: number, stretch: number): number {
  const { stretches } = sketch.ringOf(cell);
  const inside = new Set<number>();
  for (const other of stretches.slice(stretches.indexOf(stretch) + 1, stretches.lastIndexOf(stretch)))
    if (other >= 0 && !inside.delete(other)) inside.add(other);
  return inside.size;
}
