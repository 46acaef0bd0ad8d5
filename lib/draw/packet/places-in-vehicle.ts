import type { BuildPlan, PlanItem } from '../../model/plan/index.ts';
import type { VehicleSide, ZoneKind } from '../../model/vocabulary.ts';
import { baselineFor, drawLines, drawText, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, types } from '../line-styles.ts';
import { at, boxAt, cornersOf, type PaperPoint } from '../paper.ts';
import { drawLine, drawPath, drawShape, type Parent } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { fusesText, type NumberedFuse } from './numbered-fuses.ts';
import {
  drawNumber,
  markMm,
  openPacketDrawing,
  type PacketDrawing,
  packetWidthMm,
} from './packet-drawing.ts';

/** The parts of a vehicle that an owner tells apart, from the front. */
const parts = ['front', 'inside', 'rear'] as const;
type Part = (typeof parts)[number];

/** In which part of the vehicle a zone lies. */
const partOf = {
  'engine-bay': 'front',
  'near-exhaust': 'front',
  bulkhead: 'inside',
  sill: 'inside',
  'under-carpet': 'inside',
  cabin: 'inside',
  door: 'inside',
  'in-sight': 'inside',
  'dash-top': 'inside',
  cargo: 'rear',
  roof: 'inside',
  underbody: 'inside',
} as const satisfies Record<ZoneKind, Part>;

const partNames = {
  front: 'Engine bay',
  inside: 'Passenger space',
  rear: 'Cargo space',
} as const satisfies Record<Part, string>;

/** Seen from above with the front to the left, the right side is up. */
const sides = ['right', 'middle', 'left'] as const satisfies readonly VehicleSide[];

/** A mark: the ring of a fuse, or a named thing. */
type Mark =
  | { readonly kind: 'fuse'; readonly fuse: NumberedFuse }
  | { readonly kind: 'thing'; readonly id: string; readonly said: readonly string[] };

interface Cell {
  readonly part: Part;
  readonly side: VehicleSide;
  readonly marks: readonly Mark[];
}

const rimMm = 5;
/** Above and below the body, for words. */
const headMm = 10.5;
const bandMm = 8;
const padMm = 2;
/** From the sides of a part of the vehicle to what is in it. */
const asideMm = 3.5;
const gapMm = 1.6;
const least = 13;
const partMm = (packetWidthMm - 2 * rimMm) / parts.length;
const type = types.terminal;
/** How far the corners of the body are rounded. */
const cornerMm = 6;

/** Where in the vehicle fuses, batteries and boards are: the part and the side of it, no measure. */
export function placesInVehicle(
  plan: BuildPlan,
  metrics: TextMetrics,
  fuses: readonly NumberedFuse[],
): PacketDrawing {
  const cells = cellsOf(plan, metrics, fuses);
  const rows = sides.map((side) =>
    Math.max(least, ...cells.filter((cell) => cell.side === side).map((cell) => flow(metrics, cell).highMm)),
  );
  const bodyMm = bandMm + rows.reduce((sum, high) => sum + high, 0);
  const [id, title] = ['vehicle', 'Where it is in the vehicle'];
  const description = `The vehicle from above, its front to the left. ${described(cells)}`;
  const heightMm = Math.ceil(headMm + bodyMm + headMm);
  const drawing = openPacketDrawing(plan, metrics, { id, title, description, heightMm });
  drawBody(drawing, bodyMm);
  for (const cell of cells) {
    const row = sides.indexOf(cell.side);
    const topMm = headMm + bandMm + rows.slice(0, row).reduce((sum, high) => sum + high, 0);
    const highMm = rows[row] ?? least;
    const { highMm: own, placed } = flow(metrics, cell);
    const leftMm = rimMm + parts.indexOf(cell.part) * partMm;
    for (const { mark, point } of placed)
      drawMark(drawing, mark, at(leftMm + point.xMm, topMm + (highMm - own) / 2 + point.yMm));
  }
  return { id, title, drawing, unplaced: [] };
}

function cellsOf(plan: BuildPlan, metrics: TextMetrics, fuses: readonly NumberedFuse[]): Cell[] {
  const named = (item: PlanItem, id: string, texts: readonly string[]) => ({
    item,
    mark: {
      kind: 'thing',
      id,
      said: texts.flatMap((text) => wrapText(metrics, text, partMm - 2 * asideMm - 2 * padMm, type)),
    } as const,
  });
  const boards = plan.boards.flatMap(({ id, title }) => {
    const item = plan.items.find(({ board }) => board === id);
    const numbers = fuses.filter(({ holder }) => holder.board === id).map(({ number }) => number);
    return item ? [named(item, id, [title, ...(numbers.length > 0 ? [fusesText(numbers)] : [])])] : [];
  });
  const batteries = plan.items
    .filter(({ kind }) => kind === 'battery')
    .map((item) => named(item, item.id, [shortName(item)]));
  const loose = fuses
    .filter(({ holder }) => holder.board === null)
    .map((fuse) => ({ item: fuse.holder, mark: { kind: 'fuse', fuse } as const }));
  const all: readonly { readonly item: PlanItem; readonly mark: Mark }[] = [
    ...batteries,
    ...loose,
    ...boards,
  ];
  return parts.flatMap((part) =>
    sides.flatMap((side): Cell[] => {
      const marks = all.filter(({ item }) => partOf[item.zone] === part && item.side === side);
      return marks.length === 0 ? [] : [{ part, side, marks: marks.map(({ mark }) => mark) }];
    }),
  );
}

interface Size {
  readonly wideMm: number;
  readonly highMm: number;
}

function sizeOf(metrics: TextMetrics, mark: Mark): Size {
  if (mark.kind === 'fuse') return { wideMm: 2 * markMm, highMm: 2 * markMm };
  const wide = Math.max(...mark.said.map((text) => metrics.widthMm(text, type)));
  return {
    wideMm: wide + 2 * padMm,
    highMm: (mark.said.length - 1) * linePitchMm(type) + type.capMm + 2 * padMm,
  };
}

/** The marks of a cell one beside the other, in as many lines as they need; places are those of their upper left corners. */
function flow(metrics: TextMetrics, { marks }: Pick<Cell, 'marks'>) {
  const placed: { readonly mark: Mark; readonly point: PaperPoint }[] = [];
  let [xMm, yMm, lineMm] = [asideMm, padMm, 0];
  for (const mark of marks) {
    const { wideMm, highMm } = sizeOf(metrics, mark);
    if (xMm > asideMm && xMm + wideMm > partMm - asideMm)
      [xMm, yMm, lineMm] = [asideMm, yMm + lineMm + gapMm, 0];
    placed.push({ mark, point: at(xMm, yMm) });
    xMm += wideMm + gapMm;
    lineMm = Math.max(lineMm, highMm);
  }
  return { placed, highMm: yMm + lineMm + padMm };
}

function drawMark(drawing: Drawing, mark: Mark, corner: PaperPoint): void {
  if (mark.kind === 'fuse') {
    const group = openSubject(drawing, drawing.svg, mark.fuse.holder.id);
    drawNumber(drawing, group, mark.fuse.number, at(corner.xMm + markMm, corner.yMm + markMm));
    return;
  }
  const { wideMm, highMm } = sizeOf(drawing.metrics, mark);
  const group: Parent = openSubject(drawing, drawing.svg, mark.id);
  drawShape(group, cornersOf(boxAt(corner.xMm, corner.yMm, wideMm, highMm)), lines.part, 'paper');
  const first = at(corner.xMm + padMm, corner.yMm + padMm + type.capMm);
  drawLines(drawing, group, mark.said, first, { type });
}

/** The outline of the body from above, the parts of it, and which way is which. */
function drawBody(drawing: Drawing, bodyMm: number): void {
  const { svg } = drawing;
  const [left, right, top, bottom] = [rimMm, packetWidthMm - rimMm, headMm, headMm + bodyMm];
  const [blunt, c] = [cornerMm, cornerMm / 2];
  const body = [
    `M${left + blunt} ${top}L${right - c} ${top}A${c} ${c} 0 0 1 ${right} ${top + c}L${right} ${bottom - c}`,
    `A${c} ${c} 0 0 1 ${right - c} ${bottom}L${left + blunt} ${bottom}`,
    `A${blunt} ${blunt} 0 0 1 ${left} ${bottom - blunt}L${left} ${top + blunt}`,
    `A${blunt} ${blunt} 0 0 1 ${left + blunt} ${top}Z`,
  ].join('');
  drawPath(svg, body, lines.seen);
  parts.forEach((part, index) => {
    const fromMm = rimMm + index * partMm;
    if (index > 0) drawLine(svg, [at(fromMm, top), at(fromMm, bottom)], lines.clearLimit);
    const point = at(fromMm + partMm / 2, baselineFor(top + bandMm / 2 + 0.6, types.note));
    drawText(drawing, svg, partNames[part], point, { type: types.note, align: 'middle' });
  });
  const note = { type: types.note, align: 'middle' } as const;
  const underMm = bottom + 2 + types.note.capMm;
  drawText(drawing, svg, 'Right side', at(packetWidthMm / 2, headMm - 2.6), note);
  drawText(drawing, svg, 'Left side', at(packetWidthMm / 2, underMm), note);
  drawText(drawing, svg, 'Front', at(left, underMm), { type: types.note });
  drawText(drawing, svg, 'Rear', at(right, underMm), { type: types.note, align: 'end' });
}

function described(cells: readonly Cell[]): string {
  return cells
    .map(({ part, side, marks }) => {
      const said = marks.map((mark) =>
        mark.kind === 'fuse' ? `fuse ${mark.fuse.number}` : mark.said.join(' '),
      );
      return `${partNames[part]}, ${side === 'middle' ? 'in the middle' : `${side} side`}: ${said.join('; ')}.`;
    })
    .join(' ');
}
