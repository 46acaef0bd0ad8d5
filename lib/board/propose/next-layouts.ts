import { standsFree } from '../layout/free-spots.ts';
import { type Item, type TurnDeg, turnedSize, turns } from '../layout/item.ts';
import type { Site } from '../layout/lattice.ts';
import { isRaised, LayoutJudge, type Setting } from '../layout/layout-setting.ts';
import { brokenWeight, cautionWeight } from '../layout/layout-starts.ts';
import { tidied } from '../layout/tidying.ts';
import type { WiredLayout } from './wired-layout.ts';
import type { WiringTask } from './wiring-trial.ts';

type Stand = readonly Site[];

/** Changes that are brought into line and wired, of all that are looked at. */
const bestOf = 24;

/** Steps of the lattice that an item is moved by. */
const shifts = [2, 4, 8];

/**
 * Changes of a wired layout, the most promising first: an item turned or moved, or two exchanged; first those of what
 * keeps a wire from its way or its length. `tried`: what was given before, which is not given again.
 */
export function* nextLayouts(
  setting: Setting,
  wiring: WiringTask,
  { sites, trial, cautions }: WiredLayout,
  tried: Set<string>,
): Generator<Stand> {
  const judge = new LayoutJudge(setting);
  judge.judge(sites);
  judge.take();
  const troubled = troubledItems(setting, wiring, trial);
  const ranked = [...changes(setting, sites, troubled)]
    .map(({ at, stand }) => {
      const { cost, broken, cautions: more } = judge.judge(stand);
      const over = cautionWeight * Math.max(0, more - cautions) + brokenWeight * Math.max(0, broken);
      return { at, stand, cost: cost + over };
    })
    .toSorted((a, b) => a.cost - b.cost);
  for (const { stand } of inTurns(ranked).slice(0, bestOf)) {
    const { sites: next } = tidied(setting, stand);
    const key = next.map(({ xM, yM, turnDeg }) => `${xM.toFixed(5)} ${yM.toFixed(5)} ${turnDeg}`).join(';');
    if (tried.has(key) || judge.judge(next).broken > 1e-9) continue;
    tried.add(key);
    yield next;
  }
}

/** Ranked changes so that each item has its turn: the best of each, then the second of each, and so on. */
function inTurns<T extends { readonly at: number }>(ranked: readonly T[]): T[] {
  const seen = new Map<number, number>();
  return ranked
    .map((one) => {
      const turn = seen.get(one.at) ?? 0;
      seen.set(one.at, turn + 1);
      return { one, turn };
    })
    .toSorted((a, b) => a.turn - b.turn)
    .map(({ one }) => one);
}

/** The open items that keep a wire from its way or its length, or that it ends at. */
function troubledItems(
  { open }: Setting,
  { wires }: WiringTask,
  { noWay, short, tight }: WiredLayout['trial'],
): ReadonlySet<number> {
  const names = new Set([...noWay.flat(), ...short, ...(noWay.length + short.length > 0 ? [] : tight)]);
  for (const { id, along } of wires)
    if (names.has(id))
      for (const { from, to } of along) for (const end of [from, to]) if ('item' in end) names.add(end.item);
  return new Set(open.flatMap(({ item }, at) => (names.has(item.id) ? [at] : [])));
}

/** A changed layout, and the item that was changed. */
interface Change {
  readonly at: number;
  readonly stand: Stand;
}

function* changes(setting: Setting, sites: Stand, troubled: ReadonlySet<number>): Generator<Change> {
  const some = troubled.size > 0 ? [...troubled] : [...sites.keys()];
  for (const at of some) for (const stand of changesOf(setting, sites, at)) yield { at, stand };
}

/** An item turned, moved to each side, or exchanged with another. */
function* changesOf(setting: Setting, sites: Stand, at: number): Generator<Stand> {
  const { stepM } = setting.rules.house;
  const [one, site] = [setting.open[at], sites[at]];
  if (!one || !site || isRaised(one, site)) return;
  for (const turnDeg of turns)
    if (turnDeg !== site.turnDeg) yield* put(setting, sites, at, turned(one.item, site, turnDeg));
  for (const by of shifts)
    for (const [x, y] of [
      [by, 0],
      [-by, 0],
      [0, by],
      [0, -by],
    ] as const)
      yield* put(setting, sites, at, { ...site, xM: site.xM + x * stepM, yM: site.yM + y * stepM });
  for (const other of sites.keys()) if (other !== at) yield* exchanged(setting, sites, at, other);
}

/** A site with the item turned about its middle. */
function turned(item: Item, site: Site, turnDeg: TurnDeg): Site {
  return centred(item, { ...site, turnDeg }, middleOf(item, site));
}

function middleOf(item: Item, { xM, yM, turnDeg }: Site): { readonly xM: number; readonly yM: number } {
  const size = turnedSize(item, turnDeg);
  return { xM: xM + size.xM / 2, yM: yM + size.yM / 2 };
}

function centred(item: Item, site: Site, middle: { readonly xM: number; readonly yM: number }): Site {
  const size = turnedSize(item, site.turnDeg);
  return { ...site, xM: middle.xM - size.xM / 2, yM: middle.yM - size.yM / 2 };
}

/** The layout with an item on a site, its corner on what a tape shows; none where it does not stand on board there. */
function* put(setting: Setting, sites: Stand, at: number, site: Site): Generator<Stand> {
  const one = setting.open[at];
  const { tapeM } = setting.rules.house;
  if (!one) return;
  const size = turnedSize(one.item, site.turnDeg);
  const [xM, yM] = [Math.round(site.xM / tapeM) * tapeM, Math.round(site.yM / tapeM) * tapeM];
  const box = { minX: xM, minY: yM, maxX: xM + size.xM, maxY: yM + size.yM };
  if (!standsFree(setting.boardLines, box, site.heightM > 0)) return;
  yield sites.map((old, index) => (index === at ? { ...site, xM, yM } : old));
}

function* exchanged(setting: Setting, sites: Stand, at: number, other: number): Generator<Stand> {
  const [one, two, mine, theirs] = [setting.open[at], setting.open[other], sites[at], sites[other]];
  if (!one || !two || !mine || !theirs || isRaised(two, theirs)) return;
  const [here, there] = [middleOf(one.item, mine), middleOf(two.item, theirs)];
  for (const half of put(setting, sites, at, centred(one.item, mine, there)))
    yield* put(setting, half, other, centred(two.item, theirs, here));
}
