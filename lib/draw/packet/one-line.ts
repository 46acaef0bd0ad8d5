import type { BuildPlan, PlanItem } from '../../model/plan/index.ts';
import { drawLines, drawText, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { roleStyles, types } from '../line-styles.ts';
import { at } from '../paper.ts';
import { drawLine } from '../pen.ts';
import { type FeedNode, feedForest, isSource } from '../power/feed-tree.ts';
import { ratingText, shortName } from '../power/feed-words.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { drawSymbol, placeSymbol, symbols } from '../symbols/index.ts';
import { isWay, type NumberedFuse } from './numbered-fuses.ts';
import { openPacketDrawing, type PacketDrawing, packetWidthMm } from './packet-drawing.ts';

const rimMm = 5;
/** From the line of a thing to that of what hangs on it, without a fuse between and with one. */
const stepMm = 6;
const fusedMm = 13;
/** From the end of a line to its name. */
const nameMm = 2.5;
const rowGapMm = 4;
/** No name gets less room than this. */
const leastNameMm = 26;

/** A thing of the feed in its row: what hangs on what, and the fuses on the way to it. */
interface Row {
  readonly item: PlanItem;
  /** The row that it hangs on; null of a source. */
  readonly parent: number | null;
  readonly fuses: readonly NumberedFuse[];
  /** True of a battery whose own line begins below. */
  readonly goesOn: boolean;
}

/** Every positive feed of a job as one line each, from the battery on, with the rating of every fuse. */
export function oneLine(
  plan: BuildPlan,
  metrics: TextMetrics,
  fuses: readonly NumberedFuse[],
): PacketDrawing | null {
  const rows: Row[] = [];
  // A battery in the middle of the feed begins a line of its own: what it feeds is found at once, and no line runs deep.
  const open = [...feedForest(plan).roots];
  for (let root = open.shift(); root; root = open.shift()) addRow(rows, root, null, [], { fuses, open });
  if (rows.length === 0) return null;
  const places = layOut(rows, metrics);
  const last = places.at(-1);
  const [id, title] = ['one-line', 'From the battery to each device'];
  const description = `What feeds what. ${rows.map((row) => rowText(row, rows)).join('; ')}.`;
  const heightMm = Math.ceil((last?.bottomMm ?? 0) + rimMm);
  const drawing = openPacketDrawing(plan, metrics, { id, title, description, heightMm });
  rows.forEach((row, index) => {
    const place = places[index];
    const parent = row.parent === null ? null : (places[row.parent] ?? null);
    if (place) drawRow(drawing, row, place, parent);
  });
  return { id, title, drawing, unplaced: [] };
}

/** Adds a thing and what hangs on it. A holder of one fuse is no row of its own: its fuse stands before what it feeds. */
function addRow(
  rows: Row[],
  node: FeedNode,
  parent: number | null,
  before: readonly NumberedFuse[],
  shared: { readonly fuses: readonly NumberedFuse[]; readonly open: FeedNode[] },
): void {
  const { item, branches } = node;
  const own = shared.fuses.filter(({ holder }) => holder.id === item.id);
  const isHolder = own.length > 0 && item.kind === 'fuse-holder';
  const [only, ...more] = branches;
  if (isHolder && only && more.length === 0) {
    addRow(rows, only.to, parent, [...before, ...own], shared);
    return;
  }
  const goesOn = parent !== null && isSource(item) && branches.length > 0;
  rows.push({ item, parent, fuses: isHolder ? [...before, ...own] : before, goesOn });
  if (goesOn) {
    shared.open.push(node);
    return;
  }
  const at = rows.length - 1;
  for (const { fromTerminal, to } of branches) {
    const ofWay = isHolder ? [] : own.filter(({ fuse }) => isWay(fuse, fromTerminal));
    addRow(rows, to, at, ofWay, shared);
  }
}

interface Place {
  readonly texts: readonly string[];
  /** Where its line comes from, where it ends, and at what height. */
  readonly fromMm: number;
  readonly endMm: number;
  readonly lineMm: number;
  readonly bottomMm: number;
}

function layOut(rows: readonly Row[], metrics: TextMetrics): Place[] {
  const places: Place[] = [];
  let topMm = rimMm;
  for (const { item, parent, fuses, goesOn } of rows) {
    const fromMm = parent === null ? rimMm : (places[parent]?.endMm ?? rimMm);
    const endMm = fromMm + (parent === null ? 0 : stepMm) + fuses.length * fusedMm;
    const roomMm = Math.max(leastNameMm, packetWidthMm - rimMm - endMm - nameMm);
    const texts = wrapText(
      metrics,
      goesOn ? `${shortName(item)}, see below` : shortName(item),
      roomMm,
      types.item,
    );
    const ratingMm = fuses.length > 0 ? linePitchMm(types.terminal) + 1.5 : 0;
    const highMm = texts.length * linePitchMm(types.item) + ratingMm;
    places.push({ texts, fromMm, endMm, lineMm: topMm + types.item.capMm / 2, bottomMm: topMm + highMm });
    topMm += highMm + rowGapMm;
  }
  return places;
}

const feed = roleStyles.power.line;

function drawRow(drawing: Drawing, { item, fuses }: Row, place: Place, parent: Place | null): void {
  const group = openSubject(drawing, drawing.svg, item.id);
  const { texts, fromMm, endMm, lineMm } = place;
  if (parent) {
    // Down from its parent, then to the right; the fuses lie on the way.
    drawLine(group, [at(fromMm, parent.lineMm), at(fromMm, lineMm), at(endMm, lineMm)], feed);
    fuses.forEach((_, index) => {
      const symbolMm = fromMm + stepMm / 2 + (index + 0.5) * fusedMm;
      drawSymbol(drawing, group, placeSymbol(symbols.fuse, at(symbolMm, lineMm)));
    });
  }
  drawSymbol(drawing, group, placeSymbol(symbols.junction, at(endMm, lineMm)));
  const first = at(endMm + nameMm, lineMm + types.item.capMm / 2);
  drawLines(drawing, group, texts, first, { type: types.item });
  if (fuses.length === 0) return;
  const ratingMm = lineMm + texts.length * linePitchMm(types.item);
  drawText(drawing, group, ratingsText(fuses), at(endMm + nameMm, ratingMm + 1), { type: types.terminal });
}

function ratingsText(fuses: readonly NumberedFuse[]): string {
  return fuses.map(({ number, fuse }) => `Fuse ${number}: ${ratingText(fuse).text}`).join(', ');
}

function rowText({ item, parent, fuses }: Row, rows: readonly Row[]): string {
  const from = parent === null ? null : rows[parent];
  const through = fuses.length > 0 ? ` through ${ratingsText(fuses)}` : '';
  return from ? `${shortName(from.item)} feeds ${shortName(item)}${through}` : shortName(item);
}
