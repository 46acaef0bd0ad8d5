import type { BuildPlan } from '../../model/plan/index.ts';
import { shownLabel } from '../../model/plan/shown-names.ts';
import { drawConductor } from '../conductor-line.ts';
import { baselineFor, drawLines, drawText, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, type TypeStyle, types } from '../line-styles.ts';
import { at, cornersOf, type PaperBox } from '../paper.ts';
import { drawLine, drawShape, type Parent } from '../pen.ts';
import { shortName, wireLengthText } from '../power/feed-words.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { drawSymbol, placeSymbol, symbols } from '../symbols/index.ts';
import {
  headMm,
  type LaidBox,
  type LaidEdge,
  outputLines,
  pairPitchMm,
  type SignalLayout,
  speakerLines,
  speakerSymbolMm,
  speakerTextMm,
} from './signal-layout.ts';
import type { SignalConductor, SignalEdge, SignalModel } from './signal-model.ts';

const padMm = 1.5;
/** Line that stays in sight at each end of a conductor and round the text in its middle. */
const strokeMm = 3;

/** Widths of columns and of the gaps after them, for the columns that are shown. */
export interface SignalWidths {
  readonly columns: ReadonlyMap<number, number>;
  readonly gaps: ReadonlyMap<number, number>;
  readonly totalMm: number;
}

/** What the widths of a diagram follow from. */
export interface SignalView {
  readonly plan: BuildPlan;
  readonly model: SignalModel;
  readonly layout: SignalLayout;
  readonly from: number;
  readonly to: number;
}

/** The widths that the texts ask for. */
export function signalWidths(
  { plan, model, layout, from, to }: SignalView,
  metrics: TextMetrics,
): SignalWidths {
  const columns = new Map<number, number>();
  const gaps = new Map<number, number>();
  const columnOf = (id: string): number => model.units.find(({ item }) => item.id === id)?.column ?? 0;
  for (let column = from; column <= to; column += 1) {
    const own = layout.boxes.filter(({ unit }) => unit.column === column);
    columns.set(column, Math.max(0, ...own.map((box) => boxWidth(plan, model, layout, box, metrics))));
    const edges = layout.edges.filter(
      ({ edge }) => columnOf(edge.from) === column && columnOf(edge.to) === column + 1,
    );
    const widest = Math.max(
      12,
      ...edges.flatMap(({ edge }) => edge.conductors.map((one) => lineWidth(one, metrics))),
    );
    if (column < to) gaps.set(column, widest);
  }
  const sum = [...columns.values(), ...gaps.values()].reduce((total, each) => total + each, 0);
  return { columns, gaps, totalMm: sum };
}

function lineWidth({ wire }: SignalConductor, metrics: TextMetrics): number {
  const label = metrics.widthMm(shownLabel(wire), types.wireLabel) + 2 * padMm;
  return 2 * label + metrics.widthMm(middleText(wire), types.note) + 2 * padMm + 4 * strokeMm;
}

function middleText({ colour, size }: SignalConductor['wire']): string {
  return colour ?? size.label;
}

/** Width of the widest terminal name at one side of a box. */
function sideMm(edges: readonly SignalEdge[], side: 'from' | 'to', metrics: TextMetrics): number {
  const names = edges.flatMap(({ conductors }) =>
    conductors.map((one) => (side === 'from' ? one.fromTerminal : one.toTerminal)),
  );
  return Math.max(0, ...names.map((name) => metrics.widthMm(name, types.terminal) + padMm));
}

function boxWidth(
  plan: BuildPlan,
  model: SignalModel,
  layout: SignalLayout,
  { unit }: LaidBox,
  metrics: TextMetrics,
): number {
  const id = unit.item.id;
  const inputs = layout.edges.filter(({ edge }) => edge.to === id).map(({ edge }) => edge);
  const outputs = layout.edges.filter(({ edge }) => edge.from === id).map(({ edge }) => edge);
  const left = sideMm(inputs, 'to', metrics);
  if (unit.column > model.amplifiers) return left + speakerSymbolMm + speakerTextMm + 4.5;
  const told = outputs
    .flatMap((edge) => outputLines(plan, edge))
    .map((text) => metrics.widthMm(text, types.note));
  const head = titleOf(shortName(unit.item), metrics);
  const title = Math.max(...head.lines.map((text) => metrics.widthMm(text, head.type))) + 2 * padMm;
  return Math.max(title, left + sideMm(outputs, 'from', metrics) + Math.max(4, ...told) + 4 * padMm, 22);
}

/** The widest that a title may make its box. */
const titleMm = 40;

/** A title on one line; a long one small and on as many as it takes. */
function titleOf(title: string, metrics: TextMetrics): { lines: readonly string[]; type: TypeStyle } {
  if (metrics.widthMm(title, types.item) <= titleMm) return { lines: [title], type: types.item };
  return { lines: wrapText(metrics, title, titleMm, types.terminal), type: types.terminal };
}

/** Draws the diagram with its upper left corner at a point of a room, in the middle of its width. */
export function paintSignal(drawing: Drawing, view: SignalView, room: PaperBox): void {
  const { model, layout, from, to } = view;
  const widths = signalWidths(view, drawing.metrics);
  const gapCount = Math.max(1, to - from);
  const spareMm = Math.min(14, Math.max(0, room.rightMm - room.leftMm - widths.totalMm) / gapCount);
  const lefts = new Map<number, number>();
  let xMm = (room.leftMm + room.rightMm - widths.totalMm - spareMm * (to - from)) / 2;
  for (let column = from; column <= to; column += 1) {
    lefts.set(column, xMm);
    xMm += (widths.columns.get(column) ?? 0) + (widths.gaps.get(column) ?? 0) + spareMm;
  }
  const boxAt = (column: number): { leftMm: number; rightMm: number } => {
    const leftMm = lefts.get(column) ?? room.leftMm;
    return { leftMm, rightMm: leftMm + (widths.columns.get(column) ?? 0) };
  };
  const columnOf = (id: string): number => model.units.find(({ item }) => item.id === id)?.column ?? 0;
  for (const laid of layout.edges) {
    const fromMm = boxAt(columnOf(laid.edge.from)).rightMm;
    const toMm = boxAt(columnOf(laid.edge.to)).leftMm;
    paintConductors(drawing, view, laid, { fromMm, toMm, topMm: room.topMm });
  }
  for (const box of layout.boxes) {
    const place = {
      ...boxAt(box.unit.column),
      topMm: room.topMm + box.topMm,
      bottomMm: room.topMm + box.bottomMm,
    };
    if (box.unit.column > model.amplifiers) paintSpeaker(drawing, view, box, place);
    else paintUnit(drawing, view, box, place, room.topMm);
  }
}

/** Heights of the conductors of an edge. */
function heightsOf({ edge, yMm }: LaidEdge): number[] {
  const first = yMm - ((edge.conductors.length - 1) * pairPitchMm) / 2;
  return edge.conductors.map((_, index) => first + index * pairPitchMm);
}

interface Reach {
  readonly fromMm: number;
  readonly toMm: number;
  readonly topMm: number;
}

function paintConductors(drawing: Drawing, { plan }: SignalView, laid: LaidEdge, reach: Reach): void {
  heightsOf(laid).forEach((yMm, index) => {
    const conductor = laid.edge.conductors[index];
    if (conductor) paintConductor(drawing, conductor, reach, reach.topMm + yMm);
  });
  const [first] = laid.edge.conductors;
  if (laid.edge.conductors.length !== 2 || !first) return;
  const { wire } = first;
  const said = `${wire.size.label}, ${wireLengthText(plan, wire.lengthM)}`;
  const point = at((reach.fromMm + reach.toMm) / 2, baselineFor(reach.topMm + laid.yMm, types.note));
  drawText(drawing, openSubject(drawing, drawing.svg, wire.id), said, point, {
    type: types.note,
    align: 'middle',
  });
}

/** A conductor with its label in line at both ends and its colour letters in the middle. */
function paintConductor(
  drawing: Drawing,
  { wire }: SignalConductor,
  { fromMm, toMm }: Reach,
  yMm: number,
): void {
  const { metrics } = drawing;
  const group = openSubject(drawing, drawing.svg, wire.id);
  const label = shownLabel(wire);
  const labelMm = metrics.widthMm(label, types.wireLabel);
  const middle = middleText(wire);
  const middleMm = metrics.widthMm(middle, types.note);
  const centreMm = (fromMm + toMm) / 2;
  const texts = [
    { text: label, leftMm: fromMm + strokeMm + padMm, wideMm: labelMm, type: types.wireLabel },
    { text: middle, leftMm: centreMm - middleMm / 2, wideMm: middleMm, type: types.note },
    { text: label, leftMm: toMm - strokeMm - padMm - labelMm, wideMm: labelMm, type: types.wireLabel },
  ];
  let xMm = fromMm;
  for (const { text, leftMm, wideMm, type } of texts) {
    drawConductor(group, [at(xMm, yMm), at(leftMm - padMm, yMm)], wire.role);
    drawText(drawing, group, text, at(leftMm, baselineFor(yMm, type)), { type });
    xMm = leftMm + wideMm + padMm;
  }
  drawConductor(group, [at(xMm, yMm), at(toMm, yMm)], wire.role);
}

/** Names of the terminals at one side of a box. */
function paintTerminals(
  drawing: Drawing,
  parent: Parent,
  laid: LaidEdge,
  side: 'from' | 'to',
  edgeMm: number,
  topMm: number,
): void {
  heightsOf(laid).forEach((yMm, index) => {
    const conductor = laid.edge.conductors[index];
    if (!conductor) return;
    const name = side === 'from' ? conductor.fromTerminal : conductor.toTerminal;
    const xMm = side === 'from' ? edgeMm - padMm : edgeMm + padMm;
    const point = at(xMm, baselineFor(topMm + yMm, types.terminal));
    drawText(drawing, parent, name, point, {
      type: types.terminal,
      align: side === 'from' ? 'end' : 'start',
    });
  });
}

function paintUnit(
  drawing: Drawing,
  { plan, layout }: SignalView,
  box: LaidBox,
  place: PaperBox,
  topMm: number,
): void {
  const { item } = box.unit;
  const group = openSubject(drawing, drawing.svg, item.id);
  drawShape(group, cornersOf(place), lines.seen);
  const { lines: title, type } = titleOf(shortName(item), drawing.metrics);
  const middleMm = (place.leftMm + place.rightMm) / 2;
  const firstMm =
    baselineFor(place.topMm + headMm / 2 - 0.3, type) - ((title.length - 1) * linePitchMm(type)) / 2;
  drawLines(drawing, group, title, at(middleMm, firstMm), { type, align: 'middle' });
  const ruleMm = place.topMm + headMm - 0.6;
  drawLine(group, [at(place.leftMm, ruleMm), at(place.rightMm, ruleMm)], lines.rule);
  for (const laid of layout.edges) {
    const inside = topMm + laid.yMm > place.topMm && topMm + laid.yMm < place.bottomMm;
    if (!inside) continue;
    if (laid.edge.to === item.id) paintTerminals(drawing, group, laid, 'to', place.leftMm, topMm);
    if (laid.edge.from !== item.id) continue;
    paintTerminals(drawing, group, laid, 'from', place.rightMm, topMm);
    const told = outputLines(plan, laid.edge);
    const rightMm = place.rightMm - sideMm([laid.edge], 'from', drawing.metrics) - 2 * padMm;
    paintTold(drawing, group, told, rightMm, topMm + laid.yMm);
  }
}

/** Lines that end at a place, centred on a height. */
function paintTold(
  drawing: Drawing,
  parent: Parent,
  told: readonly string[],
  rightMm: number,
  yMm: number,
): void {
  const type = types.note;
  const firstMm = baselineFor(yMm, type) - ((told.length - 1) * linePitchMm(type)) / 2;
  drawLines(drawing, parent, told, at(rightMm, firstMm), { type, align: 'end' });
}

function paintSpeaker(
  drawing: Drawing,
  { plan, model, layout }: SignalView,
  box: LaidBox,
  place: PaperBox,
): void {
  const { item } = box.unit;
  const group = openSubject(drawing, drawing.svg, item.id);
  const own = layout.edges.filter(({ edge }) => edge.to === item.id);
  const topMm = place.topMm - box.topMm;
  const onBox = own.filter(({ yMm }) => topMm + yMm > place.topMm && topMm + yMm < place.bottomMm);
  drawShape(group, cornersOf(place), lines.part);
  for (const laid of onBox) paintTerminals(drawing, group, laid, 'to', place.leftMm, topMm);
  const namesMm = sideMm(
    own.map(({ edge }) => edge),
    'to',
    drawing.metrics,
  );
  const middleMm = (place.topMm + place.bottomMm) / 2;
  const symbolMm = place.leftMm + padMm + namesMm + 6;
  drawSymbol(drawing, group, placeSymbol(symbols.loudspeaker, at(symbolMm, middleMm)));
  const title = wrapText(drawing.metrics, shortName(item), speakerTextMm, types.item);
  const facts = box.again ? ['again'] : speakerLines(plan, model, item.id);
  const highMm = title.length * linePitchMm(types.item) + facts.length * linePitchMm(types.note) - 2.4;
  const leftMm = symbolMm + 4;
  const firstMm = middleMm - highMm / 2 + types.item.capMm;
  drawLines(drawing, group, title, at(leftMm, firstMm), { type: types.item });
  const factsMm = firstMm + (title.length - 1) * linePitchMm(types.item) + 4.6;
  drawLines(drawing, group, facts, at(leftMm, factsMm), { type: types.note });
}
