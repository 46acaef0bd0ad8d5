import { baselineFor, drawText, type TextAlign } from '../lettering/lettering.ts';
import { arrow, type LineStyle, lines, types } from '../line-styles.ts';
import { at, type PaperPoint } from '../paper.ts';
import { drawArrowHead, drawCircle, drawLine, drawShape, type Fill } from '../pen.ts';
import type { Drawing } from '../surface.ts';

const type = types.pictureNote;

/** What a picture of ways is drawn with: places in millimetres of paper, y downwards. */
export interface Sketch {
  /** A closed shape. */
  shape(points: readonly PaperPoint[], line?: LineStyle, fill?: Fill): void;
  /** An upright rectangle, by two corners. */
  box(from: PaperPoint, to: PaperPoint, line?: LineStyle, fill?: Fill): void;
  stroke(points: readonly PaperPoint[], line?: LineStyle): void;
  circle(centre: PaperPoint, radiusMm: number, line?: LineStyle, fill?: Fill): void;
  /** A word whose middle is at the height of a point. */
  word(text: string, point: PaperPoint, align?: TextAlign): void;
  /** An arrow from where a measure starts: a ring there, the head where it ends. */
  measure(from: PaperPoint, to: PaperPoint): void;
  /** How far it is from one side of a thing to another: a head at both ends. */
  span(from: PaperPoint, to: PaperPoint): void;
  /** The datum: a ring of the size of a dimension's origin. */
  datum(point: PaperPoint): void;
}

export function sketchOn(drawing: Drawing): Sketch {
  const { svg } = drawing;
  const ends = (from: PaperPoint, to: PaperPoint): void => {
    drawLine(svg, [from, to], lines.part);
    drawArrowHead(svg, to, from);
  };
  return {
    shape: (points, line = lines.seen, fill) => drawShape(svg, points, line, fill),
    box: (from, to, line = lines.seen, fill) =>
      drawShape(svg, [from, at(to.xMm, from.yMm), to, at(from.xMm, to.yMm)], line, fill),
    stroke: (points, line = lines.seen) => drawLine(svg, points, line),
    circle: (centre, radiusMm, line = lines.seen, fill) => drawCircle(svg, centre, radiusMm, line, fill),
    word: (text, { xMm, yMm }, align = 'start') => {
      drawText(drawing, svg, text, at(xMm, baselineFor(yMm, type)), { type, align });
    },
    measure: (from, to) => {
      ends(from, to);
      drawCircle(svg, from, arrow.originRadiusMm / 2, lines.part, 'paper');
    },
    span: (from, to) => {
      ends(from, to);
      drawArrowHead(svg, from, to);
    },
    datum: (point) => drawCircle(svg, point, arrow.originRadiusMm, lines.seen, 'paper'),
  };
}
