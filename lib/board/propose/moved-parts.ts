import { standsFree } from '../layout/free-spots.ts';
import { type Item, type TurnDeg, turnedSize } from '../layout/item.ts';
import type { Site } from '../layout/lattice.ts';
import type { Stand } from '../layout/layout-moves.ts';
import type { Setting } from '../layout/layout-setting.ts';
import type { Point } from '../shape/point.ts';

/** The same for layouts that are one, near enough. */
export function standKey(sites: Stand): string {
  return sites.map(({ xM, yM, turnDeg }) => `${xM.toFixed(5)} ${yM.toFixed(5)} ${turnDeg}`).join(';');
}

/** The middle of an item on a site. */
export function middleOf(item: Item, { xM, yM, turnDeg }: Site): Point {
  const size = turnedSize(item, turnDeg);
  return { xM: xM + size.xM / 2, yM: yM + size.yM / 2 };
}

/** A site with the item's middle somewhere. */
export function centred(item: Item, site: Site, middle: Point): Site {
  const size = turnedSize(item, site.turnDeg);
  return { ...site, xM: middle.xM - size.xM / 2, yM: middle.yM - size.yM / 2 };
}

/** A site with the item turned about its middle. */
export function turned(item: Item, site: Site, turnDeg: TurnDeg): Site {
  return centred(item, { ...site, turnDeg }, middleOf(item, site));
}

/** The layout with an item on a site, its corner on what a tape shows; none where it does not stand on board there. */
export function* put(setting: Setting, sites: Stand, at: number, site: Site): Generator<Stand> {
  const one = setting.open[at];
  const { tapeM } = setting.rules.house;
  if (!one) return;
  const size = turnedSize(one.item, site.turnDeg);
  const [xM, yM] = [Math.round(site.xM / tapeM) * tapeM, Math.round(site.yM / tapeM) * tapeM];
  const box = { minX: xM, minY: yM, maxX: xM + size.xM, maxY: yM + size.yM };
  if (!standsFree(setting.boardLines, box, site.heightM > 0)) return;
  yield sites.map((old, index) => (index === at ? { ...site, xM, yM } : old));
}
