import { type Box, type Point, ringOfBox } from '../shape/point.ts';
import { roomInsideM } from '../shape/ring-gap.ts';
import type { BoardLines } from './board-lines.ts';
import { type FreeSpots, freeSpots } from './free-spots.ts';
import { type Item, type TurnDeg, turnedSize, turns } from './item.ts';

/** A place on the lattice where an item may stand, and its column and row. */
export interface Site extends Point {
  readonly turnDeg: TurnDeg;
  readonly column: number;
  readonly row: number;
  /** Underside of the item over the board's face, metres. */
  readonly heightM: number;
}

/** All places where an item may stand at one height. */
export interface Sites {
  readonly heightM: number;
  readonly list: readonly Site[];
  /** By turn, column and row. */
  at(turnDeg: TurnDeg, column: number, row: number): Site | undefined;
  /** The one whose corner is nearest to a point, were the lattice without end; undefined where that is off the board. */
  nearest(turnDeg: TurnDeg, corner: Point): Site | undefined;
}

/**
 * Every place of a square lattice (from the lower left corner of the board's box) where an item stands on
 * board all over: inside the outline and, unless it is raised, off openings and holes. At most 200 by 200.
 * Items of one size share their places.
 */
export function sitesOf(boardLines: BoardLines, item: Item, heightM: number, wantedStepM: number): Sites {
  const known = sitesKnown.get(boardLines) ?? new Map<string, Sites>();
  sitesKnown.set(boardLines, known);
  const key = [item.widthM, item.depthM, heightM, wantedStepM].join(' ');
  const sites =
    known.get(key) ?? allSites(boardLines, item, heightM, usableStepM(boardLines.box, wantedStepM));
  known.set(key, sites);
  return sites;
}

/** By size, height and step. */
const sitesKnown = new WeakMap<BoardLines, Map<string, Sites>>();

function allSites(boardLines: BoardLines, item: Item, heightM: number, stepM: number): Sites {
  const { box } = boardLines;
  const spots = ([0, 90] as const).map((turnDeg) =>
    freeSpots(boardLines, turnedSize(item, turnDeg), stepM, heightM > 0),
  );
  const byTurn = turns.map((turnDeg): readonly (Site | undefined)[] => {
    const { columns, rows, free } = spots[(turnDeg / 90) % 2] ?? noSpots;
    return Array.from({ length: columns * rows }, (_, spot): Site | undefined => {
      if (free[spot] !== 1) return undefined;
      const [column, row] = [Math.floor(spot / rows), spot % rows];
      const [xM, yM] = [box.minX + column * stepM, box.minY + row * stepM];
      return { column, row, xM, yM, turnDeg, heightM };
    });
  });
  const at: Sites['at'] = (turnDeg, column, row) => {
    const rows = spots[(turnDeg / 90) % 2]?.rows ?? 0;
    return row < 0 || row >= rows || column < 0 ? undefined : byTurn[turnDeg / 90]?.[column * rows + row];
  };
  const nearest: Sites['nearest'] = (turnDeg, { xM, yM }) =>
    at(turnDeg, Math.round((xM - box.minX) / stepM), Math.round((yM - box.minY) / stepM));
  return { heightM, list: byTurn.flat().filter((site) => site !== undefined), at, nearest };
}

const noSpots: FreeSpots = { columns: 0, rows: 0, free: new Uint8Array(0) };

/** The same places, the item raised to a height on rails that stand where it would. */
export function raisedSites(sites: Sites, heightM: number): Sites {
  const list = sites.list.map((site): Site => ({ ...site, heightM }));
  const raised = new Map(sites.list.map((site, at) => [site, list[at]]));
  const up = (site: Site | undefined): Site | undefined => site && raised.get(site);
  return {
    heightM,
    list,
    at: (turnDeg, column, row) => up(sites.at(turnDeg, column, row)),
    nearest: (turnDeg, corner) => up(sites.nearest(turnDeg, corner)),
  };
}

/** A step that leaves at most 200 places along the longer side, so that no input makes the search endless. */
function usableStepM(box: Box, stepM: number): number {
  const least = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 200;
  return Math.max(stepM, least);
}

function boxAt(at: Point, size: Point): Box {
  return { minX: at.xM, minY: at.yM, maxX: at.xM + size.xM, maxY: at.yM + size.yM };
}

/** By how much an item that has no site is too large, metres: the least that it reaches out, over all turns. */
export function tooLargeByM(boardLines: BoardLines, item: Item, wantedStepM: number): number {
  const { box } = boardLines;
  const stepM = usableStepM(box, wantedStepM);
  const [spanX, spanY] = [box.maxX - box.minX, box.maxY - box.minY];
  const excess = ([0, 90] as const).map((turnDeg) => {
    const size = turnedSize(item, turnDeg);
    const overM = Math.max(size.xM - spanX, size.yM - spanY);
    if (overM > 1e-9) return overM;
    const steps = (free: number) => Math.min(24, Math.floor(free / stepM + 1e-9) + 1);
    const [nx, ny] = [steps(spanX - size.xM), steps(spanY - size.yM)];
    const reaches = Array.from({ length: nx * ny }, (_, at) => {
      const share = (index: number, n: number) => (n > 1 ? index / (n - 1) : 0.5);
      const corner = {
        xM: box.minX + share(at % nx, nx) * (spanX - size.xM),
        yM: box.minY + share(Math.floor(at / nx), ny) * (spanY - size.yM),
      };
      return -roomInsideM(ringOfBox(boxAt(corner, size)), boardLines.outer);
    });
    return Math.max(0, Math.min(...reaches));
  });
  return Math.min(...excess);
}
