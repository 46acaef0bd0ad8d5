import type { Edge } from '../model/vocabulary.ts';
import { drawText } from './lettering/lettering.ts';
import { spreadApart } from './lettering/spread.ts';
import { arrow, lines, spacing, types } from './line-styles.ts';
import { at, boxRound, type PaperBox, type PaperPoint } from './paper.ts';
import { drawArrowHead, drawCircle, drawLine, type Parent } from './pen.ts';
import type { Drawing } from './surface.ts';

/** One measured place along an axis. */
export interface OrdinateMark {
  /** Where it stands on paper, along the axis. */
  readonly alongMm: number;
  /** Where the thing that is measured stands, across the axis: its extension line starts there. */
  readonly featureMm: number;
  readonly text: string;
}

export interface OrdinateRow {
  /** The side of the outline on which the row stands. */
  readonly side: Edge;
  /** Where the dimension line stands, across the axis. */
  readonly lineMm: number;
  /** The datum along the axis: the origin of every dimension in the row. */
  readonly datumMm: number;
  readonly marks: readonly OrdinateMark[];
  /** How far along the axis texts may spread. */
  readonly room: { readonly fromMm: number; readonly toMm: number };
}

/** What a row of dimensions came to. */
export interface DrawnOrdinates {
  /** The room of the row, texts and extension lines beyond the dimension line included; null where nothing fits. */
  readonly box: PaperBox | null;
  /** Marks that were left out since there are more of them than the room holds. */
  readonly left: readonly OrdinateMark[];
}

/** Turns places along and across an axis into points, and knows which way is away from the thing. */
interface Axis {
  readonly point: (alongMm: number, acrossMm: number) => PaperPoint;
  readonly out: 1 | -1;
  readonly level: boolean;
}

const axes: Readonly<Record<OrdinateRow['side'], Axis>> = {
  top: { point: at, out: -1, level: true },
  bottom: { point: at, out: 1, level: true },
  left: { point: (along, across) => at(across, along), out: -1, level: false },
  right: { point: (along, across) => at(across, along), out: 1, level: false },
};

const jogMm = 3;
const type = types.dimension;

/**
 * Draws a row of superimposed running dimensions after ISO 129-1 (mem): one dimension line from the origin
 * circle, an arrow at each extension line, the value in line with it beyond. Where values are closer than
 * their height, they spread and the extension lines bend towards them. Draws all marks or none.
 */
export function drawOrdinates(drawing: Drawing, parent: Parent, row: OrdinateRow): DrawnOrdinates {
  const axis = axes[row.side];
  const marks = distinct(row.marks);
  const textAlong = spreadApart(
    marks.map((mark) => mark.alongMm),
    ordinatePitchMm(drawing),
    row.room.fromMm,
    row.room.toMm,
  );
  if (textAlong === null) return { box: null, left: marks };
  drawDimensionLine(parent, row, marks, axis);
  const boxes = marks.map((mark, index) =>
    drawMark(drawing, parent, { row, axis, mark, textMm: textAlong[index] ?? mark.alongMm }),
  );
  const corners = boxes.flatMap((box) => [at(box.leftMm, box.topMm), at(box.rightMm, box.bottomMm)]);
  const ends = [row.datumMm, ...marks.map((mark) => mark.alongMm)].map((along) =>
    axis.point(along, row.lineMm),
  );
  return { box: boxRound([...corners, ...ends]), left: [] };
}

/** The least distance of one value from the next along the axis. */
export function ordinatePitchMm({ metrics }: Pick<Drawing, 'metrics'>): number {
  return metrics.ascentMm(type) + metrics.descentMm(type) + spacing.clearMm / 2;
}

/** How far a row reaches beyond its dimension line. */
export function ordinateDepthMm({ metrics }: Pick<Drawing, 'metrics'>, texts: readonly string[]): number {
  const longest = Math.max(0, ...texts.map((text) => metrics.widthMm(text, type)));
  return spacing.extensionPastMm + jogMm + spacing.clearMm + longest;
}

/** Ascending, each place and text once. */
function distinct(marks: readonly OrdinateMark[]): OrdinateMark[] {
  const sorted = [...marks].sort((a, b) => a.alongMm - b.alongMm || a.featureMm - b.featureMm);
  return sorted.filter((mark, index) => {
    const before = sorted[index - 1];
    return before?.alongMm !== mark.alongMm || before.text !== mark.text;
  });
}

function drawDimensionLine(
  parent: Parent,
  row: OrdinateRow,
  marks: readonly OrdinateMark[],
  axis: Axis,
): void {
  const places = [row.datumMm, ...marks.map((mark) => mark.alongMm)];
  const onLine = (along: number): PaperPoint => axis.point(along, row.lineMm);
  drawLine(parent, [onLine(Math.min(...places)), onLine(Math.max(...places))], lines.dimension);
  for (const { alongMm } of marks)
    if (alongMm !== row.datumMm) drawArrowHead(parent, onLine(alongMm), onLine(row.datumMm));
  drawCircle(parent, onLine(row.datumMm), arrow.originRadiusMm, lines.dimension, 'paper');
}

interface MarkPlace {
  readonly row: OrdinateRow;
  readonly axis: Axis;
  readonly mark: OrdinateMark;
  readonly textMm: number;
}

function drawMark(drawing: Drawing, parent: Parent, { row, axis, mark, textMm }: MarkPlace): PaperBox {
  const past = row.lineMm + axis.out * spacing.extensionPastMm;
  const jogged = past + axis.out * jogMm;
  const start = mark.featureMm + axis.out * spacing.extensionGapMm;
  drawLine(
    parent,
    [axis.point(mark.alongMm, start), axis.point(mark.alongMm, past), axis.point(textMm, jogged)],
    lines.dimension,
  );
  const middle = textMm + type.capMm / 2;
  const point = axis.point(middle, jogged + axis.out * spacing.clearMm);
  // A turned text reads upwards: its end is on top, so below a thing it ends at the line.
  const endsAtLine = axis.level ? axis.out === 1 : axis.out === -1;
  return drawText(drawing, parent, mark.text, point, {
    type,
    turned: axis.level,
    align: endsAtLine ? 'end' : 'start',
  });
}
