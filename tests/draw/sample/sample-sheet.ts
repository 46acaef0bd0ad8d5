import { bulgePath, type OutlinePoint, outlineBox } from '../../../lib/draw/bulge-path.ts';
import { drawConductor } from '../../../lib/draw/conductor-line.ts';
import { drawOrdinates } from '../../../lib/draw/dimension.ts';
import { hatchFill } from '../../../lib/draw/hatch.ts';
import { anchorAt } from '../../../lib/draw/lettering/label-candidates.ts';
import { placeLabels } from '../../../lib/draw/lettering/label-placement.ts';
import { baselineFor, drawText } from '../../../lib/draw/lettering/lettering.ts';
import type { Obstacle } from '../../../lib/draw/lettering/obstacle-index.ts';
import { lines, roleStyles, types } from '../../../lib/draw/line-styles.ts';
import { at, boxAt, cornersOf, type PaperPoint } from '../../../lib/draw/paper.ts';
import { drawCircle, drawLeader, drawLine, drawPath, drawShape } from '../../../lib/draw/pen.ts';
import { drawFrame, type Frame } from '../../../lib/draw/sheet/frame.ts';
import { lengthOnPaper, onPaper, type PlanView } from '../../../lib/draw/sheet/scale.ts';
import { type SheetFormat, sheetSize } from '../../../lib/draw/sheet/sheet-format.ts';
import { type Drawing, openDrawing, openGroup } from '../../../lib/draw/surface.ts';
import { drawSymbol, placeSymbol, symbols } from '../../../lib/draw/symbols/index.ts';
import type { CircuitSymbol } from '../../../lib/draw/symbols/symbol.ts';
import { dimensionNote, dimensionText, type LengthStyle } from '../../../lib/model/quantity/length-text.ts';
import { conductorRoleSchema } from '../../../lib/model/vocabulary.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';

const inch = 0.0254;
const tape: LengthStyle = { system: 'inch', fraction: 16 };

/** An invented board: 24 by 12 in, a round corner, a notch, and a corner cut. */
const outline: readonly OutlinePoint[] = [
  { xM: 0, yM: 0, bulge: 0 },
  { xM: 22 * inch, yM: 0, bulge: Math.tan(Math.PI / 8) },
  { xM: 24 * inch, yM: 2 * inch, bulge: 0 },
  { xM: 24 * inch, yM: 12 * inch, bulge: 0 },
  { xM: 14 * inch, yM: 12 * inch, bulge: 0 },
  { xM: 14 * inch, yM: 9.5 * inch, bulge: 0 },
  { xM: 9.25 * inch, yM: 9.5 * inch, bulge: 0 },
  { xM: 9.25 * inch, yM: 12 * inch, bulge: 0 },
  { xM: 3 * inch, yM: 12 * inch, bulge: 0 },
  { xM: 0, yM: 9 * inch, bulge: 0 },
];

const holes = [
  { xM: 0.75 * inch, yM: 0.75 * inch, diameterM: 0.25 * inch },
  { xM: 1 * inch, yM: 8 * inch, diameterM: 0.25 * inch },
  { xM: 12 * inch, yM: 0.75 * inch, diameterM: 0.25 * inch },
  { xM: 12.5 * inch, yM: 8 * inch, diameterM: 0.25 * inch },
  { xM: 23.25 * inch, yM: 11.25 * inch, diameterM: 0.25 * inch },
  { xM: 18 * inch, yM: 6 * inch, diameterM: 2 * inch },
];

/** A whole sheet of everything: frame, dimensioned outline, labels, symbols, conductors. */
export function sampleSheet(format: SheetFormat, draft: string | null): { drawing: Drawing; frame: Frame } {
  const drawing = openDrawing({
    job: 'sample-job',
    sheet: 'sample',
    ...sheetSize(format),
    title: 'Sample sheet',
    description:
      'Frame, title block, a board with running dimensions, every symbol and every conductor line.',
    metrics: shippedMetrics,
  });
  const frame = drawFrame(drawing, {
    block: {
      legalOwner: 'Example Fabrication',
      title: 'Board, cut and drill',
      supplementaryTitle: 'Estate car, left side well',
      documentType: 'Cut drawing',
      job: 'sample-job',
      revision: 'B',
      scale: 5,
      issuedOn: '2024-05-14',
      drawnBy: 'A. Sample',
      approvedBy: '',
      status: draft === null ? 'Released' : 'Draft',
      format,
    },
    mark: draft === null ? null : { word: 'DRAFT', reason: draft },
    projection: 'third',
    notes: [dimensionNote(tape), 'Seen from the mounting side'],
  });
  frame.writeNumber({ drawing: 3, drawings: 18 });
  drawBoard(drawing, { ratio: 5, datum: at(frame.room.leftMm + 42, frame.room.topMm + 68), mirrored: false });
  const belowMm = frame.room.topMm + 120;
  if (format.orientation === 'portrait') {
    drawSymbols(drawing, at(frame.room.leftMm + 14, belowMm));
    drawRoles(drawing, at(frame.room.rightMm - 62, belowMm - 4));
  }
  return { drawing, frame };
}

function drawBoard(drawing: Drawing, view: PlanView): void {
  const group = openGroup(drawing, drawing.svg, 'board');
  drawPath(group, bulgePath(outline, view), lines.cut);
  const box = outlineBox(outline, view);
  const toPaper = (xM: number, yM: number): PaperPoint => onPaper(view, { xM, yM });
  drawShape(
    group,
    [
      toPaper(9.25 * inch, 9.5 * inch),
      toPaper(14 * inch, 9.5 * inch),
      toPaper(14 * inch, 12 * inch),
      toPaper(9.25 * inch, 12 * inch),
    ],
    lines.neighbour,
    hatchFill(drawing, 'cutaway'),
  );
  for (const hole of holes) {
    const centre = onPaper(view, hole);
    const radius = lengthOnPaper(view, hole.diameterM) / 2;
    drawCircle(group, centre, radius, lines.seen, 'paper');
    const reach = radius + 1.5;
    drawLine(group, [at(centre.xMm - reach, centre.yMm), at(centre.xMm + reach, centre.yMm)], lines.centre);
    drawLine(group, [at(centre.xMm, centre.yMm - reach), at(centre.xMm, centre.yMm + reach)], lines.centre);
  }
  const mark = (along: number, feature: number, lengthM: number) => ({
    alongMm: along,
    featureMm: feature,
    text: dimensionText(lengthM, tape),
  });
  const places = [...outline, ...holes];
  drawOrdinates(drawing, group, {
    side: 'bottom',
    lineMm: box.bottomMm + 8,
    datumMm: view.datum.xMm,
    marks: [...new Set(places.map((place) => place.xM))].map((xM) =>
      mark(toPaper(xM, 0).xMm, box.bottomMm, xM),
    ),
    room: { fromMm: box.leftMm - 6, toMm: box.rightMm + 6 },
  });
  drawOrdinates(drawing, group, {
    side: 'left',
    lineMm: box.leftMm - 4,
    datumMm: view.datum.yMm,
    marks: [...new Set(places.map((place) => place.yM))].map((yM) =>
      mark(toPaper(0, yM).yMm, box.leftMm, yM),
    ),
    room: { fromMm: box.topMm - 6, toMm: box.bottomMm + 6 },
  });
  labelHoles(drawing, view);
}

function labelHoles(drawing: Drawing, view: PlanView): void {
  const group = openGroup(drawing, drawing.svg, 'hole-labels');
  const type = types.item;
  const heightMm = drawing.metrics.ascentMm(type) + drawing.metrics.descentMm(type);
  const texts = holes.map((_, index) => `H${index + 1}`);
  const corners = cornersOf(outlineBox(outline, view));
  const obstacles: Obstacle[] = [
    ...drawing.texts.map(({ box }, index) => ({ id: `text-${index}`, box })),
    ...holes.map((hole, index) => {
      const { xMm, yMm } = onPaper(view, hole);
      const reach = lengthOnPaper(view, hole.diameterM) / 2 + 1.5;
      return { id: `H${index + 1}`, box: boxAt(xMm - reach, yMm - reach, 2 * reach, 2 * reach) };
    }),
    ...outline.map((from, index) => {
      const to = outline[(index + 1) % outline.length] ?? from;
      return { id: `edge-${index}`, segment: { from: onPaper(view, from), to: onPaper(view, to) } };
    }),
  ];
  const { placed } = placeLabels({
    labels: texts.map((text, index) => {
      const hole = obstacles.find(({ id }) => id === text);
      return {
        id: text,
        widthMm: drawing.metrics.widthMm(text, type),
        heightMm,
        anchors: hole && 'box' in hole ? [hole.box] : [anchorAt(corners[index % 4] ?? at(0, 0))],
        own: [text],
      };
    }),
    obstacles,
    room: outlineBox(outline, view),
  });
  for (const { id, box, leader } of placed) {
    if (leader) drawLeader(group, [leader.from, leader.to]);
    drawText(drawing, group, id, at(box.leftMm, box.topMm + drawing.metrics.ascentMm(type)), { type });
  }
}

function drawSymbols(drawing: Drawing, topLeft: PaperPoint): void {
  const group = openGroup(drawing, drawing.svg, 'symbols');
  const all: readonly CircuitSymbol[] = Object.values(symbols);
  all.forEach((symbol, index) => {
    const centre = at(topLeft.xMm + (index % 5) * 24, topLeft.yMm + Math.floor(index / 5) * 21);
    drawSymbol(drawing, group, placeSymbol(symbol, centre));
    const [short = ''] = symbol.what.split(/[ ,(]/);
    drawText(drawing, group, short, at(centre.xMm, centre.yMm + 11.5), { type: types.note, align: 'middle' });
  });
}

function drawRoles(drawing: Drawing, topLeft: PaperPoint): void {
  const group = openGroup(drawing, drawing.svg, 'conductors');
  const roles = conductorRoleSchema.options;
  roles.forEach((role, index) => {
    const middleMm = topLeft.yMm + (index + 0.5) * 5;
    drawConductor(group, [at(topLeft.xMm, middleMm), at(topLeft.xMm + 20, middleMm)], role);
    const point = at(topLeft.xMm + 23, baselineFor(middleMm, types.note));
    drawText(drawing, group, roleStyles[role].name, point, { type: types.note });
  });
  roles.forEach((role, index) => {
    const { xMm, yMm } = at(topLeft.xMm + index * 7, topLeft.yMm + 36);
    drawConductor(
      group,
      [at(xMm, yMm), at(xMm, yMm + 12 - index), at(xMm + 16 - index, yMm + 12 - index)],
      role,
    );
    const swatch = cornersOf(boxAt(xMm - 2, yMm + 18, 6, 8));
    drawShape(group, swatch, lines.part, hatchFill(drawing, role));
  });
}
