import type { Route, RouteWire } from './route.ts';
import type { Laid } from './tracks.ts';

/** Names what one wire is laid by, so that the same is known again: the order in which the others lie does not count. */
export class LayingKeys {
  readonly #numbers = new WeakMap<Route, number>();
  readonly #byPoints = new Map<string, number>();
  /** A wire whose ports are open comes with one name and several ends. */
  readonly #wires = new Map<RouteWire, number>();

  of(wire: RouteWire, others: readonly Laid[], crossingM: number, avoid: readonly Route[]): string {
    const avoided = avoid.map((route) => this.numberOf(route));
    const number = this.#wires.get(wire) ?? this.#wires.size;
    this.#wires.set(wire, number);
    return `${number}|${crossingM}|${this.ofLaid(others)}|${avoided.join()}`;
  }

  /** The same for wires that lie in the same tracks, in whatever order. */
  ofLaid(laid: readonly Laid[]): string {
    return laid
      .map(({ route }) => this.numberOf(route))
      .toSorted((a, b) => a - b)
      .join();
  }

  /** Two routes of one wire through the same points have the same number. */
  numberOf(route: Route): number {
    const known = this.#numbers.get(route);
    if (known !== undefined) return known;
    const points = route.points.map(({ xM, yM }) => `${xM} ${yM}`).join();
    const key = `${route.wire}|${points}`;
    const number = this.#byPoints.get(key) ?? this.#byPoints.size;
    this.#byPoints.set(key, number);
    this.#numbers.set(route, number);
    return number;
  }
}
