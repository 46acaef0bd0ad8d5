import type { PlanFuse } from '../../model/plan/index.ts';
import { drawConductor } from '../conductor-line.ts';
import { baselineFor, drawLines, drawText, fitText, linePitchMm } from '../lettering/lettering.ts';
import { lines, spacing, types } from '../line-styles.ts';
import { at, cornersOf, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawLine, drawShape, type Parent } from '../pen.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { drawSymbol, placeSymbol, symbols } from '../symbols/index.ts';
import { deviceMark } from './device-symbols.ts';
import type { PlacedFeed } from './feed-geometry.ts';
import { bodyLines, elsewhereText, markWidthMm, nameOffMm, tallPadMm, titleLines } from './feed-geometry.ts';
import type { GridNode } from './feed-grid.ts';
import { conductorLines, formText, ratingText, shortName } from './feed-words.ts';

type NodePainter = (drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode) => void;

/** How each kind of node is drawn. One that is missing here does not compile. */
const painters: { readonly [K in GridNode['kind']]: NodePainter } = {
  alternator: paintSource,
  battery: paintSource,
  fuse: paintFuse,
  distribution: paintDistribution,
  device: paintDevice,
  'ground-bar': paintGroundBar,
  body: paintBody,
  elsewhere: paintElsewhere,
};

/** Draws one node of the feed. */
export function paintNode(drawing: Drawing, placed: PlacedFeed, node: GridNode): void {
  painters[node.kind](drawing, openSubject(drawing, drawing.svg, node.item.id), placed, node);
}

function middleOf(placed: PlacedFeed, node: GridNode): PaperPoint {
  const { leftMm, rightMm } = placed.columnMm(node.column);
  return at((leftMm + rightMm) / 2, placed.rowMm(node.row));
}

/** A title whose last line ends above a height, centred. */
function titleAbove(
  drawing: Drawing,
  parent: Parent,
  node: GridNode,
  footMm: number,
  xMm: number,
  align: 'middle' | 'end' = 'middle',
): void {
  const texts = titleLines(node, drawing.metrics);
  const lastMm = footMm - drawing.metrics.descentMm(types.item) - spacing.clearMm;
  const firstMm = lastMm - (texts.length - 1) * linePitchMm(types.item);
  drawLines(drawing, parent, texts, at(xMm, firstMm), { type: types.item, align });
}

/** A source hangs below its line: symbol, its ground conductor, the body. */
function paintSource(drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode): void {
  const { xMm, yMm } = middleOf(placed, node);
  const isBattery = node.kind === 'battery';
  const reachMm = isBattery ? 5 : 7.5;
  const symbolMm = yMm + (isBattery ? 17 : 14.5) + reachMm - 5;
  const symbol = isBattery
    ? placeSymbol(symbols.battery, at(xMm, symbolMm), 3)
    : placeSymbol(symbols.generator, at(xMm, symbolMm));
  const firstMm = placed.rowMm(Math.max(node.fromRow, placed.part.fromRow));
  drawConductor(parent, [at(xMm, Math.min(firstMm, yMm)), at(xMm, symbolMm - reachMm)], 'power');
  if (isBattery) drawSymbol(drawing, parent, placeSymbol(symbols.junction, at(xMm, yMm)));
  drawSymbol(drawing, parent, symbol);
  const titleMm = at(
    xMm + (isBattery ? 6 : nameOffMm),
    baselineFor(symbolMm - (isBattery ? 4 : 2), types.item),
  );
  drawLines(drawing, parent, titleLines(node, drawing.metrics), titleMm, { type: types.item });
  paintHangingGround(drawing, parent, placed, node, at(xMm, symbolMm + reachMm));
}

/** A ground conductor that hangs on a source or bar, with its label, size and length, down to the body. */
function paintHangingGround(
  drawing: Drawing,
  parent: Parent,
  placed: PlacedFeed,
  node: GridNode,
  top: PaperPoint,
  side: 'left' | 'right' = 'right',
): void {
  const leads = placed.grid.hanging.get(node.item.id) ?? [];
  const [first] = leads;
  if (!first) return;
  const footMm = top.yMm + 14;
  const group = openSubject(drawing, parent, first.wire.id);
  drawConductor(group, [top, at(top.xMm, footMm)], 'ground');
  drawSymbol(drawing, group, placeSymbol(symbols.chassis, at(top.xMm, footMm)));
  const out = side === 'right' ? 1 : -1;
  const align = side === 'right' ? 'start' : 'end';
  const xMm = top.xMm + out * 2.5;
  const labels = leads.map(({ wire }) => wire.label).filter((label) => label !== '');
  let yMm = top.yMm + 1;
  if (labels.length > 0) {
    yMm += drawing.metrics.ascentMm(types.wireLabel);
    drawText(drawing, group, labels.join(' '), at(xMm, yMm), { type: types.wireLabel, align });
    yMm += drawing.metrics.descentMm(types.wireLabel) + 0.2;
  }
  const type = types.note;
  const texts = conductorLines(placed.plan, first.wire);
  drawLines(drawing, group, texts, at(xMm, yMm + drawing.metrics.ascentMm(type)), { type, align });
  const pointMm = at(top.xMm + out * 5.2, footMm + 2.5 + type.capMm);
  drawText(drawing, group, first.toTerminal, pointMm, { type, align });
}

/** Symbol on the line, title above, rating and form below. */
function paintFuse(drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode): void {
  const middle = middleOf(placed, node);
  const fuse = placed.plan.power.fuses.find(({ item }) => item === node.item.id);
  drawSymbol(drawing, parent, placeSymbol(symbols.fuse, middle));
  titleAbove(drawing, parent, node, middle.yMm - 5.5, middle.xMm);
  paintRating(drawing, parent, fuse, at(middle.xMm, middle.yMm + 2.6));
}

/** Rating and form, centred below a point; a fuse without a rating is boxed, so that none passes over it. */
function paintRating(drawing: Drawing, parent: Parent, fuse: PlanFuse | undefined, top: PaperPoint): void {
  const { text, rated } = ratingText(fuse);
  const type = types.item;
  const baseMm = top.yMm + drawing.metrics.ascentMm(type);
  const box = drawText(drawing, parent, text, at(top.xMm, baseMm), { type, align: 'middle' });
  if (!rated) drawShape(parent, cornersOf(grownBox(box)), lines.cut);
  const formMm =
    baseMm + drawing.metrics.descentMm(type) + drawing.metrics.ascentMm(types.note) + (rated ? 0 : 1.2);
  drawText(drawing, parent, formText(fuse), at(top.xMm, formMm), { type: types.note, align: 'middle' });
}

function grownBox(box: PaperBox): PaperBox {
  return {
    leftMm: box.leftMm - 1.2,
    topMm: box.topMm - 0.6,
    rightMm: box.rightMm + 1.2,
    bottomMm: box.bottomMm + 0.6,
  };
}

/** The rows of a tall node that stand on this part. */
function rowsOn({ part }: PlacedFeed, node: GridNode): { fromRow: number; toRow: number } {
  return { fromRow: Math.max(node.fromRow, part.fromRow), toRow: Math.min(node.toRow, part.toRow) };
}

function tallBox(placed: PlacedFeed, node: GridNode, padMm: number): PaperBox {
  const { leftMm, rightMm } = placed.columnMm(node.column);
  const { fromRow, toRow } = rowsOn(placed, node);
  const topMm = placed.rowMm(fromRow) - padMm;
  return { leftMm, rightMm, topMm, bottomMm: placed.rowMm(toRow) + padMm };
}

/** A bar with its ways, each with its fuse. */
function paintDistribution(drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode): void {
  const ways = placed.grid.edges.filter(({ from }) => from === node.id);
  const box = tallBox(placed, node, tallPadMm);
  const busMm = box.leftMm + 5;
  drawShape(parent, cornersOf(box), lines.part);
  titleAbove(drawing, parent, node, box.topMm, (box.leftMm + box.rightMm) / 2);
  const onPart = ways.filter(({ row }) => row >= placed.part.fromRow && row <= placed.part.toRow);
  const heights = [node.row, ...onPart.map(({ row }) => row)].map((row) => placed.rowMm(row));
  const clamp = (yMm: number): number => Math.min(Math.max(yMm, box.topMm + 2), box.bottomMm - 2);
  drawLine(
    parent,
    [at(busMm, clamp(Math.min(...heights)) - 1.5), at(busMm, clamp(Math.max(...heights)) + 1.5)],
    lines.cut,
  );
  drawLine(
    parent,
    [at(box.leftMm, clamp(placed.rowMm(node.row))), at(busMm, clamp(placed.rowMm(node.row)))],
    lines.cut,
  );
  for (const way of onPart) {
    const yMm = placed.rowMm(way.row);
    const fuse = placed.plan.power.fuses.find(
      ({ item, way: name }) => item === node.item.id && name === way.fromTerminal,
    );
    const middle = at((busMm + box.rightMm) / 2, yMm);
    drawLine(parent, [at(busMm, yMm), at(box.rightMm, yMm)], lines.seen);
    if (!fuse) continue;
    const group = openSubject(drawing, parent, fuse.id);
    drawSymbol(drawing, group, placeSymbol(symbols.fuse, middle));
    paintWayRating(drawing, group, fuse, middle);
  }
}

/** Rating above the symbol and form below it. */
function paintWayRating(drawing: Drawing, parent: Parent, fuse: PlanFuse, middle: PaperPoint): void {
  const { text, rated } = ratingText(fuse);
  const { metrics } = drawing;
  const baseMm = middle.yMm - 2 - metrics.descentMm(types.item);
  const box = drawText(drawing, parent, text, at(middle.xMm, baseMm), { type: types.item, align: 'middle' });
  if (!rated) drawShape(parent, cornersOf({ ...grownBox(box), bottomMm: box.bottomMm }), lines.cut);
  const formMm = middle.yMm + 2 + metrics.ascentMm(types.note);
  drawText(drawing, parent, formText(fuse), at(middle.xMm, formMm), { type: types.note, align: 'middle' });
}

const devicePadMm = 6.6;

/** The middle of the room that the symbol of a device has in its box. */
function markPoint({ leftMm, topMm, bottomMm }: PaperBox, textMm: number): PaperPoint {
  return at((leftMm + textMm) / 2 + 1, (topMm + bottomMm) / 2);
}

/** A device with what is told of it. */
function paintDevice(drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode): void {
  const box = tallBox(placed, node, devicePadMm);
  const { metrics } = drawing;
  drawShape(parent, cornersOf(box), lines.seen);
  const mark = deviceMark(node);
  const leftMm = box.leftMm + markWidthMm(node);
  if (mark) drawSymbol(drawing, parent, placeSymbol<string>(symbols[mark], markPoint(box, leftMm)));
  const facts = placed.factsOf(node.item.id);
  const room = {
    widthMm: box.rightMm - leftMm - 3,
    heightMm: box.bottomMm - box.topMm - 2 - facts.length * 4,
  };
  const title = fitText(metrics, shortName(node.item), room, [types.item, types.terminal]);
  const highMm =
    metrics.ascentMm(title.type) + (title.lines.length - 1) * linePitchMm(title.type) + facts.length * 4;
  const xMm = (leftMm + box.rightMm) / 2;
  const topMm =
    (box.topMm + box.bottomMm) / 2 -
    (highMm + metrics.descentMm(types.note)) / 2 +
    metrics.ascentMm(title.type);
  drawLines(drawing, parent, title.lines, at(xMm, topMm), { type: title.type, align: 'middle' });
  const factsMm = topMm + (title.lines.length - 1) * linePitchMm(title.type) + 4.4;
  drawLines(drawing, parent, facts, at(xMm, factsMm), { type: types.note, align: 'middle' });
}

function paintGroundBar(drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode): void {
  const box = tallBox(placed, node, tallPadMm);
  const xMm = (box.leftMm + box.rightMm) / 2;
  drawShape(parent, cornersOf(box), lines.seen);
  titleAbove(drawing, parent, node, box.topMm, box.rightMm, 'end');
  if (node.toRow <= placed.part.toRow)
    paintHangingGround(drawing, parent, placed, node, at(xMm, box.bottomMm), 'left');
}

/** The body of the vehicle, at a named point. */
function paintBody(drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode): void {
  const middle = middleOf(placed, node);
  const { xMm, yMm } = middle;
  drawConductor(parent, [middle, at(xMm, yMm + 3)], 'ground');
  drawSymbol(drawing, parent, placeSymbol(symbols.chassis, at(xMm, yMm + 3)));
  const texts = bodyLines(placed.grid, node);
  const firstMm = yMm + 8 + spacing.clearMm + drawing.metrics.ascentMm(types.note);
  drawLines(drawing, parent, texts, at(xMm, firstMm), { type: types.note, align: 'middle' });
}

/** The name of the far end, at the end of the line. */
function paintElsewhere(drawing: Drawing, parent: Parent, placed: PlacedFeed, node: GridNode): void {
  const { leftMm, rightMm } = placed.columnMm(node.column);
  const type = types.note;
  const yMm = baselineFor(placed.rowMm(node.row), type);
  const comes = placed.grid.edges.some(({ from }) => from === node.id);
  const point = comes ? at(rightMm - spacing.labelGapMm, yMm) : at(leftMm + spacing.labelGapMm, yMm);
  const align = comes ? 'end' : 'start';
  drawText(drawing, parent, elsewhereText(placed.grid, node), point, { type, align });
}
