import { type Item, outward, type Side, sides, turnedSize, turns } from '../layout/item.ts';
import type { Site } from '../layout/lattice.ts';
import type { Stand } from '../layout/layout-moves.ts';
import { isRaised, LayoutJudge, type Setting } from '../layout/layout-setting.ts';
import { brokenWeight, cautionWeight } from '../layout/layout-starts.ts';
import { tidied } from '../layout/tidying.ts';
import type { Point } from '../shape/point.ts';
import { centred, middleOf, put, standKey, turned } from './moved-parts.ts';
import type { WiredLayout } from './wired-layout.ts';
import type { WiringTask } from './wiring-trial.ts';

/** Changes that are brought into line and wired, of all that are looked at. */
const bestOf = 24;

/** Steps of the lattice that an item is moved by. */
const shifts = [2, 4, 8];

/**
 * Changes of a wired layout, the most promising first: an item turned or moved, two exchanged, or what shares out brought
 * before a side of another part; first those of what keeps a wire from its way or its length. `tried`: what was given
 * before, which is not given again.
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
    const key = standKey(next);
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

/** An item turned, moved to each side, or exchanged with another; what shares out also brought before each side of others. */
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
  if (one.item.shares !== undefined) yield* beside(setting, sites, at);
}

/** What shares out, turned each way before each side of each other part, all else that shares out along with it. */
function* beside(setting: Setting, sites: Stand, at: number): Generator<Stand> {
  const [one, site] = [setting.open[at], sites[at]];
  if (!one || !site) return;
  const companions = setting.open.flatMap(({ item }, other) =>
    other !== at && item.shares !== undefined ? [other] : [],
  );
  for (const [other, { item, sites: low }] of setting.open.entries()) {
    const theirs = sites[other];
    if (other === at || !theirs || theirs.heightM !== low.heightM || item.shares !== undefined) continue;
    for (const turnDeg of turns)
      for (const side of sides) {
        const middle = beforeSide(setting, [item, theirs], [one.item, { ...site, turnDeg }], side);
        for (const alone of put(setting, sites, at, centred(one.item, { ...site, turnDeg }, middle))) {
          yield alone;
          yield* along(setting, alone, companions, { from: middleOf(one.item, site), to: middle });
        }
      }
  }
}

/** Companions moved by as much as what they belong to. */
function* along(
  setting: Setting,
  sites: Stand,
  companions: readonly number[],
  { from, to }: { readonly from: Point; readonly to: Point },
): Generator<Stand> {
  let moved = [sites];
  for (const other of companions) {
    const site = sites[other];
    if (!site) return;
    const next = { ...site, xM: site.xM + to.xM - from.xM, yM: site.yM + to.yM - from.yM };
    moved = moved.flatMap((stand) => [...put(setting, stand, other, next)]);
  }
  if (companions.length > 0) yield* moved;
}

/** Room that is left between a part and what is brought before it, for the bends of its wires, metres (house judgement). */
const beforeM = 0.08;

/** The middle of an item that stands before the middle of a side of another. */
function beforeSide(
  setting: Setting,
  [item, site]: readonly [Item, Site],
  [own, { turnDeg }]: readonly [Item, Site],
  side: Side,
): Point {
  const [theirs, mine] = [turnedSize(item, site.turnDeg), turnedSize(own, turnDeg)];
  const gapM = Math.max(beforeM, setting.rules.partGapM);
  const { xM, yM } = middleOf(item, site);
  const [acrossM, alongM] = [(theirs.xM + mine.xM) / 2 + gapM, (theirs.yM + mine.yM) / 2 + gapM];
  return { xM: xM + outward[side].xM * acrossM, yM: yM + outward[side].yM * alongM };
}

function* exchanged(setting: Setting, sites: Stand, at: number, other: number): Generator<Stand> {
  const [one, two, mine, theirs] = [setting.open[at], setting.open[other], sites[at], sites[other]];
  if (!one || !two || !mine || !theirs || isRaised(two, theirs)) return;
  const [here, there] = [middleOf(one.item, mine), middleOf(two.item, theirs)];
  for (const half of put(setting, sites, at, centred(one.item, mine, there)))
    yield* put(setting, half, other, centred(two.item, theirs, here));
}
