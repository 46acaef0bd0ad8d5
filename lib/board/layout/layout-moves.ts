import type { Random } from '../random.ts';
import { turnedSize, turns } from './item.ts';
import type { Site, Sites } from './lattice.ts';
import { isRaised, type Open, type Setting } from './layout-setting.ts';

/** A site of each open item, in their order. */
export type Stand = readonly Site[];

/** Up to which draw each kind of change is made: shifted, turned in place, put beside another; else moved anywhere. */
const sharesOfFlat = { shifted: 0.5, turned: 0.62, beside: 0.9 } as const;
const sharesOfRaised = { shifted: 0.6, turned: 0.75, beside: 0.75 } as const;

/** The changes from one layout to the next that a search tries; as many items stay raised as are. */
export class LayoutMoves {
  readonly #setting: Setting;
  readonly #random: Random;

  /** Every open item, and those that a wire joins each to. */
  readonly #all: readonly number[];
  readonly #joined: readonly (readonly number[])[];

  constructor(setting: Setting, random: Random) {
    this.#setting = setting;
    this.#random = random;
    const { open, links } = setting;
    this.#all = open.map((_, at) => at);
    this.#joined = open.map(({ item: { id } }, at) => {
      const ends = links.flatMap(({ from, to }) => {
        const items = [from, to].flatMap((end) => ('item' in end ? [end.item] : []));
        return items.includes(id) ? items : [];
      });
      return this.#all.filter((other) => other !== at && ends.includes(open[other]?.item.id ?? ''));
    });
  }

  /** One of a list, by chance. */
  pick<T>(list: readonly T[]): T | undefined {
    return list[Math.floor(this.#random() * list.length)];
  }

  /** A neighbour of a layout: one item shifted, turned in place, put beside another, moved anywhere or restacked, or two exchanged. */
  changed(sites: Stand): Stand {
    const { open } = this.#setting;
    const raised = open.flatMap((one, at) => {
      const site = sites[at];
      return site && isRaised(one, site) ? [at] : [];
    });
    if (raised.length > 0 && this.#random() < 0.2) return this.#restacked(sites, raised);
    const at = Math.floor(this.#random() * open.length);
    const [one, site] = [open[at], sites[at]];
    if (!one || !site) return sites;
    const kind = this.#random();
    if (kind < 0.12 && open.length > 1) return this.#exchanged(sites, at);
    if (kind < 0.24 && open.length > 1) return this.#together(sites, at);
    const level = levelOf(one, site);
    // Where some are raised, hardly any room is left beside others: parts are rather moved about.
    const shares = raised.length > 0 ? sharesOfRaised : sharesOfFlat;
    if (kind < shares.shifted) {
      const [column, row] = [site.column + this.#shift(), site.row + this.#shift()];
      return replaced(sites, at, level.at(site.turnDeg, column, row));
    }
    if (kind < shares.turned)
      return replaced(sites, at, level.at(this.pick(turns) ?? 0, site.column, site.row));
    return kind < shares.beside ? this.#beside(sites, at, level) : replaced(sites, at, this.pick(level.list));
  }

  /** An item beside another, one that a wire joins it to where there is one, in line with it as near as the lattice has it. */
  #beside(sites: Stand, at: number, level: Sites): Stand {
    const { open, rules } = this.#setting;
    const joined = this.#joined[at] ?? [];
    const other = this.pick(joined.length > 0 && this.#random() < 0.75 ? joined : this.#all) ?? at;
    const [one, two, site, theirs] = [open[at], open[other], sites[at], sites[other]];
    if (!one || !two || !site || !theirs || other === at) return sites;
    const turnDeg = this.#random() < 0.6 ? site.turnDeg : (this.pick(turns) ?? 0);
    const [size, next] = [turnedSize(one.item, turnDeg), turnedSize(two.item, theirs.turnDeg)];
    const gapM = rules.partGapM + Math.floor(this.#random() * 5) * rules.house.stepM;
    const share = Math.floor(this.#random() * 3) / 2;
    const alongX = theirs.xM + share * (next.xM - size.xM);
    const alongY = theirs.yM + share * (next.yM - size.yM);
    const side = Math.floor(this.#random() * 4);
    const corner =
      side < 2
        ? { xM: side === 0 ? theirs.xM + next.xM + gapM : theirs.xM - gapM - size.xM, yM: alongY }
        : { xM: alongX, yM: side === 2 ? theirs.yM + next.yM + gapM : theirs.yM - gapM - size.yM };
    return replaced(sites, at, level.nearest(turnDeg, corner));
  }

  /** An item a little to each side, turned in place or at another height, or a little to each side with another. */
  *near(sites: Stand, at: number): Generator<Stand> {
    for (const by of [1, 2, 5])
      for (const [x, y] of [
        [by, 0],
        [-by, 0],
        [0, by],
        [0, -by],
      ] as const) {
        const one = this.#shifted(sites, at, x, y);
        if (one) yield one;
        for (let other = at + 1; other < sites.length && by === 1; other += 1) {
          const both = one && this.#shifted(one, other, x, y);
          if (both) yield both;
        }
      }
    const [site, open] = [sites[at], this.#setting.open[at]];
    if (!site || !open) return;
    for (const turnDeg of [0, 90, 180, 270] as const) {
      const turned = levelOf(open, site).at(turnDeg, site.column, site.row);
      if (turned && turned !== site) yield replaced(sites, at, turned);
    }
    if (!isRaised(open, site)) return;
    for (const level of open.levels.slice(1)) {
      const lifted = level.at(site.turnDeg, site.column, site.row);
      if (lifted && lifted !== site) yield replaced(sites, at, lifted);
    }
  }

  /** Sites of an item at its height spread over the board: all, or as many as its share of what may still be scored. */
  *anywhere(sites: Stand, at: number, left: number): Generator<Stand> {
    const [site, open] = [sites[at], this.#setting.open[at]];
    const list = site && open ? levelOf(open, site).list : [];
    const share = Math.max(1, Math.floor(left / (sites.length - at)));
    const stride = Math.max(1, Math.ceil(list.length / share));
    for (let index = at % stride; index < list.length; index += stride)
      yield replaced(sites, at, list[index]);
  }

  /** One raised item put over another, or set down and another raised in its stead. */
  #restacked(sites: Stand, raised: readonly number[]): Stand {
    const { open } = this.#setting;
    const up = this.pick(raised) ?? 0;
    const down = open.flatMap((one, at) => (one.levels.length > 1 && !raised.includes(at) ? [at] : []));
    const other = this.#random() < 0.4 ? this.pick(down) : undefined;
    if (other === undefined) return this.#over(sites, up);
    const [mine, theirs] = [sites[up], sites[other]];
    const level = this.pick(open[other]?.levels.slice(1) ?? []);
    if (!mine || !theirs || !level) return sites;
    const low = open[up]?.sites.at(mine.turnDeg, mine.column, mine.row);
    const high = level.at(theirs.turnDeg, theirs.column, theirs.row);
    return low && high ? replaced(replaced(sites, up, low), other, high) : sites;
  }

  /** A raised item with its middle over that of another, at one of its heights. */
  #over(sites: Stand, up: number): Stand {
    const one = this.#setting.open[up];
    const level = this.pick(one?.levels.slice(1) ?? []);
    const turnDeg = this.pick([0, 90, 180, 270] as const) ?? 0;
    const lower = Math.floor(this.#random() * sites.length);
    const [beneath, at] = [this.#setting.open[lower], sites[lower]];
    if (!one || !level || !beneath || !at || lower === up) return sites;
    const [size, below] = [turnedSize(one.item, turnDeg), turnedSize(beneath.item, at.turnDeg)];
    const corner = { xM: at.xM + (below.xM - size.xM) / 2, yM: at.yM + (below.yM - size.yM) / 2 };
    return replaced(sites, up, level.nearest(turnDeg, corner));
  }

  /** An item and another shifted by the same step, as two that a wire joins want to be. */
  #together(sites: Stand, at: number): Stand {
    const [columns, rows] = [this.#shift(), this.#shift()];
    const other = Math.floor(this.#random() * sites.length);
    const one = this.#shifted(sites, at, columns, rows);
    return (one && (other === at ? one : this.#shifted(one, other, columns, rows))) ?? sites;
  }

  #shift(): number {
    return Math.floor(this.#random() * 7) - 3;
  }

  #exchanged(sites: Stand, at: number): Stand {
    const { open } = this.#setting;
    const other = Math.floor(this.#random() * open.length);
    const [mine, theirs] = [sites[at], sites[other]];
    if (!mine || !theirs || other === at) return sites;
    const swap = (one: Open | undefined, to: Site, own: Site) =>
      one && levelOf(one, own).at(own.turnDeg, to.column, to.row);
    const [a, b] = [swap(open[at], theirs, mine), swap(open[other], mine, theirs)];
    return a && b ? replaced(replaced(sites, at, a), other, b) : sites;
  }

  #shifted(sites: Stand, at: number, columns: number, rows: number): Stand | null {
    const [site, open] = [sites[at], this.#setting.open[at]];
    const next = site && open && levelOf(open, site).at(site.turnDeg, site.column + columns, site.row + rows);
    return next ? replaced(sites, at, next) : null;
  }
}

function levelOf({ levels, sites }: Open, { heightM }: Site): Sites {
  return levels.find((level) => level.heightM === heightM) ?? sites;
}

/** A layout with one item elsewhere; the same where it has no such place. */
function replaced(sites: Stand, at: number, next: Site | undefined): Stand {
  return next ? sites.with(at, next) : sites;
}
