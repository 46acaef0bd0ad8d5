import type { Random } from '../random.ts';
import type { Site } from './lattice.ts';
import type { LayoutMoves, Stand } from './layout-moves.ts';
import { LayoutJudge, type Setting } from './layout-setting.ts';

/** What one metre of overlap costs, metres of wire: more than any wire can save. */
export const brokenWeight = 1000;

/** What a caution of the rules costs while searching, metres of wire: of two layouts that with fewer is proposed. */
export const cautionWeight = 1.5;

/** Sites of an item that are looked at, by chance, beside those that stand already. */
const tries = 30;

/** The layouts that a search begins with. */
export class LayoutStarts {
  readonly #setting: Setting;
  readonly #raised: number;
  readonly #moves: LayoutMoves;
  readonly #random: Random;

  /** `raised`: how many of the items that may be raised are. */
  constructor(setting: Setting, raised: number, moves: LayoutMoves, random: Random) {
    this.#setting = setting;
    this.#raised = raised;
    this.#moves = moves;
    this.#random = random;
  }

  /** Largest items first, each at the best of some random sites beside those that stand already. */
  first(start: number): { readonly sites: Stand; readonly evaluations: number } {
    const { open } = this.#setting;
    const levels = this.#levels(start);
    const sites = new Array<Site | undefined>(open.length).fill(undefined);
    const areasM2 = open.map(({ item }) => item.widthM * item.depthM);
    const order = open.map((_, at) => at).toSorted((a, b) => (areasM2[b] ?? 0) - (areasM2[a] ?? 0));
    const judge = new LayoutJudge(this.#setting);
    for (const at of order) {
      judge.judge(sites);
      judge.take();
      let least = Infinity;
      for (let tried = 0; tried < tries; tried += 1) {
        const site = this.#moves.pick(open[at]?.levels[levels[at] ?? 0]?.list ?? []);
        const { cost, broken, cautions } = judge.judge(
          sites.map((old, index) => (index === at ? site : old)),
        );
        const costsM = cost + brokenWeight * broken + cautionWeight * cautions;
        if (costsM < least) [least, sites[at]] = [costsM, site];
      }
    }
    return { sites: sites.flatMap((site) => site ?? []), evaluations: tries * open.length };
  }

  /** The level of each item: the largest that may be raised are, or others by chance. */
  #levels(start: number): readonly number[] {
    const { open } = this.#setting;
    if (this.#raised === 0) return open.map(() => 0);
    const order = open
      .map(({ item, levels }, at) => ({ at, levels, areaM2: item.widthM * item.depthM }))
      .filter(({ levels }) => levels.length > 1)
      .map((one) => ({ ...one, rank: start === 0 ? -one.areaM2 : this.#random() }))
      .toSorted((a, b) => a.rank - b.rank);
    const chosen = new Set(order.slice(0, this.#raised).map(({ at }) => at));
    return open.map(({ levels }, at) => {
      if (!chosen.has(at)) return 0;
      return start === 0 ? 1 : 1 + Math.floor(this.#random() * (levels.length - 1));
    });
  }
}
