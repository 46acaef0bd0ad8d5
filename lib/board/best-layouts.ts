import type { Site } from './lattice.ts';

/** A layout that keeps every hard rule, and its cost. */
export interface Found {
  readonly cost: number;
  readonly sites: readonly Site[];
}

/** Two layouts differ where an item is turned, raised otherwise, or stands this far elsewhere, metres. */
export const differM = 0.1;

function differ(a: Found, b: Found): boolean {
  return a.sites.some((site, at) => {
    const other = b.sites[at];
    if (!other) return true;
    const movedM = Math.hypot(site.xM - other.xM, site.yM - other.yM);
    return site.turnDeg !== other.turnDeg || site.heightM !== other.heightM || movedM >= differM;
  });
}

/** Keeps the best layouts that differ from each other, best first. */
export class BestLayouts {
  readonly #keep: number;
  #list: Found[] = [];

  constructor(keep: number) {
    this.#keep = keep;
  }

  /** Best first. */
  get list(): readonly Found[] {
    return this.#list;
  }

  /** Takes a layout in where it is better than a like one, or than the worst kept. */
  offer(found: Found): void {
    const worst = this.#list.at(-1);
    if (this.#list.length >= this.#keep && worst && found.cost >= worst.cost) return;
    const like = this.#list.filter((other) => !differ(found, other));
    if (like.some((other) => other.cost <= found.cost)) return;
    const rest = this.#list.filter((other) => !like.includes(other));
    this.#list = [...rest, found].toSorted((a, b) => a.cost - b.cost).slice(0, this.#keep);
  }
}
