import { tightestBend } from '../bends.ts';
import { isLedRound } from '../led-round.ts';
import { crossingCount, type Route, type RouteWire, stretches } from '../route.ts';
import type { Laid } from '../tracks.ts';
import type { WayPrice } from './dress-task.ts';
import { keepApart } from './dresser.ts';
import { bundlesTooMany, strayedM } from './together.ts';

/** What a laying is judged by, in metres of thin wire. */
export interface DressPrices {
  readonly crossingM: number;
  /** For a bend, and besides so many times its radius. */
  readonly bendM: number;
  readonly bendRadii: number;
  /** For each metre besides, so many times the diameter of its wire: thick wire takes room, and is dear. */
  readonly perDiameter: number;
  /** For each metre of power and signal side by side, at no distance. */
  readonly nearness: number;
  /** For each metre that the two wires of a pair run apart. */
  readonly stray: number;
  /** For each wire that is led far round, or round something. */
  readonly roundM: number;
  /** For each bundle of a run that leaves by a side, beyond the first. */
  readonly bundleM: number;
}

/** A bend that is too tight, or a way longer than the wire, is worse than any number of crossings (m). */
const unlawfulM = 100;

/** What the way of one wire costs. */
export function priceOf(wire: RouteWire, prices: DressPrices): WayPrice {
  return {
    metre: 1 + prices.perDiameter * wire.diameterM,
    bendM: prices.bendM + prices.bendRadii * (wire.bendRadiusM ?? 0),
    crossingM: prices.crossingM,
    nearness: prices.nearness,
    stray: prices.stray,
    bundleM: prices.bundleM,
  };
}

/** What changed between one laying and the next: the routes of some wires, by their place. */
export type Changes = ReadonlyMap<number, Route>;

/** A laying with its price, which knows what each wire and each pair adds to it. */
export class Dressed {
  readonly laid: readonly Laid[];
  readonly crossings: number;
  readonly priceM: number;
  readonly #prices: DressPrices;
  readonly #apartM: number;
  readonly #ownM: Float64Array;
  /** By the lower place times the number of wires plus the higher: crossings, and length side by side too near (m). */
  readonly #crossed: Int16Array;
  readonly #nearM: Float64Array;

  constructor(
    laid: readonly Laid[],
    prices: DressPrices,
    apartM: number,
    from?: { readonly before: Dressed; readonly changes: Changes },
  ) {
    const count = laid.length;
    [this.laid, this.#prices, this.#apartM] = [laid, prices, apartM];
    this.#ownM = from ? from.before.#ownM.slice() : new Float64Array(count);
    this.#crossed = from ? from.before.#crossed.slice() : new Int16Array(count * count);
    this.#nearM = from ? from.before.#nearM.slice() : new Float64Array(count * count);
    for (const [a, one] of laid.entries()) {
      const isNew = !from || from.changes.has(a);
      if (isNew) this.#ownM[a] = ownPriceM(one, prices);
      for (let b = a + 1; b < count; b += 1) {
        const other = laid[b];
        if (!other || !(isNew || from?.changes.has(b))) continue;
        this.#crossed[a * count + b] = crossingCount(one.route, [other.route]);
        if (keepApart(one.wire, other.wire))
          this.#nearM[a * count + b] = nearM(one.route, other.route, apartM);
      }
    }
    this.crossings = this.#crossed.reduce((sum, own) => sum + own, 0);
    const tooNearM = this.#nearM.reduce((sum, own) => sum + own, 0);
    this.priceM =
      this.#ownM.reduce((sum, own) => sum + own, 0) +
      prices.crossingM * this.crossings +
      prices.nearness * tooNearM +
      prices.stray * strayedM(laid) +
      prices.bundleM * bundlesTooMany(laid);
  }

  /** The laying with some routes otherwise. */
  with(changes: Changes): Dressed {
    const laid = this.laid.map((one, at) => {
      const route = changes.get(at);
      return route ? { wire: one.wire, route } : one;
    });
    return new Dressed(laid, this.#prices, this.#apartM, { before: this, changes });
  }

  /** How often two wires cross. */
  crossed(a: number, b: number): number {
    return this.#crossed[Math.min(a, b) * this.laid.length + Math.max(a, b)] ?? 0;
  }
}

function ownPriceM({ wire, route }: Laid, prices: DressPrices): number {
  const { metre, bendM } = priceOf(wire, prices);
  const isTight = tightestBend(route, wire.bendRadiusM ?? 0) !== null;
  const isLong = route.lengthM > (wire.longestM ?? Infinity);
  const roundM = isLedRound(route) ? prices.roundM : 0;
  return (
    metre * route.lengthM + bendM * route.bends + roundM + unlawfulM * (Number(isTight) + Number(isLong))
  );
}

/** How far two routes run side by side too near: each metre by how far inside the distance it lies (m). */
function nearM(a: Route, b: Route, apartM: number): number {
  let sum = 0;
  for (const one of stretches(a))
    for (const two of stretches(b)) {
      if (one.level !== two.level) continue;
      const lengthM = Math.min(one.to, two.to) - Math.max(one.from, two.from);
      const share = 1 - Math.abs(one.at - two.at) / apartM;
      if (lengthM > 0 && share > 0) sum += lengthM * share;
    }
  return sum;
}
