import type { Side } from '../../board/layout/item.ts';
import { drawText, textBox } from '../lettering/lettering.ts';
import { spreadApart } from '../lettering/spread.ts';
import { lines, spacing, type TypeStyle, types } from '../line-styles.ts';
import {
  at,
  boxesMeet,
  boxHolds,
  grown,
  heightMm,
  type PaperBox,
  type PaperPoint,
  widthMm,
} from '../paper.ts';
import { drawLine, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';
import {
  edgePoint,
  isLevel,
  type MergeLevels,
  mergeLevels,
  middleOf,
  type PanelName,
  type PlacedName,
  type Writing,
} from './panel-names.ts';

import { largestFree } from './stacked-items.ts';

/** Names of one side that found no room inside their item. */
export interface OutsideNames {
  readonly box: PaperBox;
  readonly side: Side;
  readonly names: readonly PanelName[];
  /** Ways of merging them, those that say most first; left out, those of names. */
  readonly merges?: MergeLevels;
}

/** What became of the names of an item. */
export interface PanelLettering {
  readonly outside: readonly OutsideNames[];
  /** What is left free in the middle of the item. */
  readonly free: PaperBox;
}

/** From the edge of the item to its names: room for the strokes between. */
const jogMm = 2.2;
const insetMm = 0.6;

/**
 * Writes names inside an item along the edges where they belong, each joined to its place by a stroke. Where they
 * are too many for an edge, pairs share a text, then runs; what still has no room is handed back. Nothing is written
 * over the boxes of items beneath.
 */
export function letterPanels(
  drawing: Drawing,
  parent: Parent,
  box: PaperBox,
  names: readonly PanelName[],
  type: TypeStyle = types.terminal,
  beneath: readonly PaperBox[] = [],
  merges: MergeLevels = mergeLevels,
): PanelLettering {
  const sides: readonly Side[] = ['left', 'right', 'bottom', 'top'];
  const outside: OutsideNames[] = [];
  const taken: PaperBox[] = [...beneath];
  let free = grown(box, -insetMm);
  const busiest = [...sides].sort((a, b) => countOf(names, b) - countOf(names, a));
  for (const side of busiest) {
    const own = names.filter((name) => name.side === side).toSorted((a, b) => a.alongMm - b.alongMm);
    if (own.length === 0) continue;
    const placed = placeSide(drawing, box, side, own, type, taken, merges);
    if (placed === null) {
      outside.push({ box, side, names: own, merges });
      continue;
    }
    for (const each of placed) drawName(drawing, parent, box, side, own, each, type);
    taken.push(...placed.map((each) => each.box));
    free = lessSide(free, side, Math.max(...placed.map((each) => depthOf(each.box, side))));
  }
  return { outside, free: largestFree(free, beneath) };
}

function countOf(names: readonly PanelName[], side: Side): number {
  return names.filter((name) => name.side === side).length;
}

function depthOf(box: PaperBox, side: Side): number {
  return jogMm + (isLevel(side) ? widthMm(box) : heightMm(box)) + spacing.clearMm;
}

function lessSide(free: PaperBox, side: Side, byMm: number): PaperBox {
  return {
    leftMm: free.leftMm + (side === 'left' ? byMm : 0),
    topMm: free.topMm + (side === 'top' ? byMm : 0),
    rightMm: free.rightMm - (side === 'right' ? byMm : 0),
    bottomMm: free.bottomMm - (side === 'bottom' ? byMm : 0),
  };
}

/** The first way of merging at which all names of a side fit; null where none does. */
function placeSide(
  drawing: Drawing,
  box: PaperBox,
  side: Side,
  names: readonly PanelName[],
  type: TypeStyle,
  taken: readonly PaperBox[],
  merges: MergeLevels,
): PlacedName[] | null {
  const { metrics } = drawing;
  const pitch = metrics.ascentMm(type) + metrics.descentMm(type) + 0.25;
  const [low, high] = isLevel(side) ? [box.topMm, box.bottomMm] : [box.leftMm, box.rightMm];
  // A text reaches farther below the middle of its capitals than above it.
  const before = metrics.ascentMm(type) - type.capMm / 2 + insetMm;
  const after = metrics.descentMm(type) + type.capMm / 2 + insetMm;
  for (const merge of merges) {
    const merged = merge(names.map(({ text }) => text));
    const wanted = merged.map((each) => middleOf(names, each));
    const spread = spreadApart(wanted, pitch, low + before, high - after);
    if (spread === null) continue;
    const placed = merged.map((each, index) => {
      const textMm = spread[index] ?? 0;
      return { merged: each, textMm, box: nameBox(drawing, box, side, each.text, textMm, type) };
    });
    const inner = grown(box, -insetMm);
    const fits = placed.every(
      (each) => boxHolds(inner, each.box) && taken.every((other) => !boxesMeet(grown(other, 0.4), each.box)),
    );
    if (fits) return placed;
  }
  return null;
}

/** Where a name is written: level beside an upright edge, turned beside a level one. */
function writingOf(box: PaperBox, side: Side, textMm: number, type: TypeStyle): Writing {
  const base = textMm + type.capMm / 2;
  if (side === 'left') return { point: at(box.leftMm + jogMm, base), align: 'start', turned: false };
  if (side === 'right') return { point: at(box.rightMm - jogMm, base), align: 'end', turned: false };
  if (side === 'bottom') return { point: at(base, box.bottomMm - jogMm), align: 'start', turned: true };
  return { point: at(base, box.topMm + jogMm), align: 'end', turned: true };
}

function nameBox(
  { metrics }: Drawing,
  box: PaperBox,
  side: Side,
  text: string,
  textMm: number,
  type: TypeStyle,
): PaperBox {
  const { point, align, turned } = writingOf(box, side, textMm, type);
  return textBox(metrics, text, point, { type, align, turned });
}

function drawName(
  drawing: Drawing,
  parent: Parent,
  box: PaperBox,
  side: Side,
  names: readonly PanelName[],
  { merged, textMm }: PlacedName,
  type: TypeStyle,
): void {
  const { point, align, turned } = writingOf(box, side, textMm, type);
  drawText(drawing, parent, merged.text, point, { type, align, turned });
  const alongs = merged.of.map((index) => names[index]?.alongMm ?? textMm);
  const inside = (alongMm: number, depthMm: number): PaperPoint => edgePoint(box, side, alongMm, depthMm);
  for (const along of alongs) drawLine(parent, [inside(along, 0), inside(along, 0.7)], lines.rule);
  const [first, last] = [Math.min(...alongs), Math.max(...alongs)];
  if (last > first) drawLine(parent, [inside(first, 0.7), inside(last, 0.7)], lines.rule);
  drawLine(parent, [inside((first + last) / 2, 0.7), inside(textMm, jogMm - 0.5)], lines.rule);
}
