import type { Site } from './lattice.ts';

/** A layout that keeps every hard rule, its cost, and how often the rules fault it all the same. */
export interface Found {
  readonly cost: number;
  readonly cautions: number;
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

/** Below zero where the first is better: fewer cautions, then the lower cost. */
export function compareFound(a: Found, b: Found): number {
  return a.cautions - b.cautions || a.cost - b.cost;
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
    if (this.#list.length >= this.#keep && worst && compareFound(found, worst) >= 0) return;
    const like = this.#list.filter((other) => !differ(found, other));
    if (like.some((other) => compareFound(other, found) <= 0)) return;
    const rest = this.#list.filter((other) => !like.includes(other));
    this.#list = [...rest, found].toSorted(compareFound).slice(0, this.#keep);
  }
}
