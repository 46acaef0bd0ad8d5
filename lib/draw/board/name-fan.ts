import type { Side } from '../../board/layout/item.ts';
import { drawText, textBox } from '../lettering/lettering.ts';
import { indexObstacles, type Obstacle } from '../lettering/obstacle-index.ts';
import { spreadApart } from '../lettering/spread.ts';
import { lines, spacing, type TypeStyle, types } from '../line-styles.ts';
import {
  at,
  boxHolds,
  boxRound,
  grown,
  type PaperBox,
  type PaperPoint,
  type PaperSegment,
} from '../paper.ts';
import { drawLine, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';
import { type MergedName, mergedRuns } from './merge-names.ts';
import type { OutsideNames } from './panel-lettering.ts';
import {
  edgePoint,
  isLevel,
  mergeLevels,
  middleOf,
  type PanelName,
  type PlacedName,
  type Writing,
} from './panel-names.ts';

/** One text for names that found no room at their side either, and the points that it is for. */
export interface LooseName {
  readonly ids: readonly string[];
  readonly text: string;
  /** Where they belong: as wide along the edge as what ends there. */
  readonly anchors: readonly PaperBox[];
}

/** How far from the edge a fan of names may begin, the nearest first; and how far past its ends it may reach. */
const fanReachesMm = [3, 5, 8, 12] as const;
const fanPastMm = 18;

/**
 * Writes names beside an item, in the order of their places along its edge, each joined to its place by a stroke
 * that crosses no other. Hands back what finds no free room: nothing of it is drawn.
 */
export function fanNames(
  drawing: Drawing,
  parent: Parent,
  { box, side, names, merges = mergeLevels }: OutsideNames,
  obstacles: readonly Obstacle[],
  room: PaperBox,
): LooseName[] {
  const index = indexObstacles(obstacles);
  const isFree = (each: PaperBox): boolean =>
    boxHolds(room, each) && !index.meetsBox(grown(each, spacing.clearMm / 2), []);
  for (const merge of merges)
    for (const reachMm of fanReachesMm) {
      const fan = layFan(drawing, box, side, names, merge(names.map(({ text }) => text)), reachMm);
      if (!fan?.every((each) => isFree(each.box))) continue;
      const strokes = fan.map((each) => strokeTo(box, side, names, each, reachMm));
      if (strokes.some((stroke) => index.leaderBlocked(stroke, []))) continue;
      for (const each of fan) drawFanned(drawing, parent, box, side, names, each, reachMm);
      return [];
    }
  const shared = merges === mergeLevels ? mergedRuns : (merges.at(-1) ?? mergedRuns);
  return shared(names.map(({ text }) => text)).map(({ text, of }) => {
    const own = of.flatMap((nth) => names[nth] ?? []);
    return {
      ids: own.map(({ id }) => id),
      text,
      anchors: own.map(({ alongMm, wideMm = 0 }) =>
        boxRound([-1, 1].map((way) => edgePoint(box, side, alongMm + (way * wideMm) / 2, 0))),
      ),
    };
  });
}

/** The stroke that joins a name to the middle of its places. */
function strokeTo(
  box: PaperBox,
  side: Side,
  names: readonly PanelName[],
  { merged, textMm }: PlacedName,
  reachMm: number,
): PaperSegment {
  const from = edgePoint(box, side, middleOf(names, merged), -0.7);
  return { from, to: edgePoint(box, side, textMm, 0.5 - reachMm) };
}

function layFan(
  drawing: Drawing,
  box: PaperBox,
  side: Side,
  names: readonly PanelName[],
  merged: readonly MergedName[],
  reachMm: number,
): PlacedName[] | null {
  const { metrics } = drawing;
  const type = types.terminal;
  const pitch = metrics.ascentMm(type) + metrics.descentMm(type) + 0.25;
  const [low, high] = isLevel(side) ? [box.topMm, box.bottomMm] : [box.leftMm, box.rightMm];
  const wanted = merged.map((each) => middleOf(names, each));
  const spread = spreadApart(wanted, pitch, low - fanPastMm, high + fanPastMm);
  return (
    spread &&
    merged.map((each, index) => {
      const textMm = spread[index] ?? 0;
      const { point, align, turned } = outerWriting(box, side, textMm, reachMm, type);
      return { merged: each, textMm, box: textBox(metrics, each.text, point, { type, align, turned }) };
    })
  );
}

/** Where a name is written outside an edge. */
function outerWriting(box: PaperBox, side: Side, textMm: number, reachMm: number, type: TypeStyle): Writing {
  const base = textMm + type.capMm / 2;
  if (side === 'left') return { point: at(box.leftMm - reachMm, base), align: 'end', turned: false };
  if (side === 'right') return { point: at(box.rightMm + reachMm, base), align: 'start', turned: false };
  if (side === 'bottom') return { point: at(base, box.bottomMm + reachMm), align: 'end', turned: true };
  return { point: at(base, box.topMm - reachMm), align: 'start', turned: true };
}

function drawFanned(
  drawing: Drawing,
  parent: Parent,
  box: PaperBox,
  side: Side,
  names: readonly PanelName[],
  { merged, textMm }: PlacedName,
  reachMm: number,
): void {
  const type = types.terminal;
  const { point, align, turned } = outerWriting(box, side, textMm, reachMm, type);
  drawText(drawing, parent, merged.text, point, { type, align, turned });
  const alongs = merged.of.map((index) => names[index]?.alongMm ?? textMm);
  const [first, last] = [Math.min(...alongs), Math.max(...alongs)];
  const outside = (alongMm: number, depthMm: number): PaperPoint => edgePoint(box, side, alongMm, -depthMm);
  for (const along of alongs) drawLine(parent, [outside(along, 0), outside(along, 0.7)], lines.rule);
  if (last > first) drawLine(parent, [outside(first, 0.7), outside(last, 0.7)], lines.rule);
  const { from, to } = strokeTo(box, side, names, { merged, textMm, box }, reachMm);
  drawLine(parent, [from, to], lines.rule);
}
