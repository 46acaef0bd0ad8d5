import { boxRound, type PaperBox, type PaperPoint } from './paper.ts';
import { roundedText } from './rounded-text.ts';
import { lengthOnPaper, onPaper, type PlanView } from './sheet/scale.ts';

/**
 * A corner of an outline, and how the edge that leaves it bends: the bulge is the tangent of a quarter of
 * the arc's angle, positive where the arc runs counter-clockwise seen with y up, 0 for a straight edge.
 */
export interface OutlinePoint {
  readonly xM: number;
  readonly yM: number;
  readonly bulge: number;
}

/** Path data of a closed outline, in the view of a drawing. Radius of an edge: chord (1 + b2) / (4 |b|). */
export function bulgePath(outline: readonly OutlinePoint[], view: PlanView): string {
  const [first] = outline;
  if (!first) return '';
  const steps = edgesOf(outline).map(({ from, to }) => {
    const end = pointText(onPaper(view, to));
    if (from.bulge === 0) return `L${end}`;
    const radius = roundedText(lengthOnPaper(view, arcOf(from, to).radiusM));
    const large = Math.abs(from.bulge) > 1 ? 1 : 0;
    // Turning y down keeps the sense that the eye sees; SVG counts clockwise as 1. A mirror turns it round.
    const sweep = from.bulge > 0 === view.mirrored ? 1 : 0;
    return `A${radius} ${radius} 0 ${large} ${sweep} ${end}`;
  });
  return `M${pointText(onPaper(view, first))}${steps.join('')}Z`;
}

/** The box on paper round an outline, bends included. */
export function outlineBox(outline: readonly OutlinePoint[], view: PlanView): PaperBox {
  const places = edgesOf(outline).flatMap(({ from, to }) => [from, ...outermost(from, to)]);
  return boxRound(places.map((place) => onPaper(view, place)));
}

interface Edge {
  readonly from: OutlinePoint;
  readonly to: OutlinePoint;
}

function edgesOf(outline: readonly OutlinePoint[]): Edge[] {
  return outline.flatMap((from, index) => {
    const to = outline[(index + 1) % outline.length];
    return to ? [{ from, to }] : [];
  });
}

interface Arc {
  readonly xM: number;
  readonly yM: number;
  readonly radiusM: number;
}

/** Centre and radius of a bent edge; the centre lies left of the chord by (1 - b2) / (4 b) of it. */
function arcOf(from: OutlinePoint, to: OutlinePoint): Arc {
  const b = from.bulge;
  const dx = to.xM - from.xM;
  const dy = to.yM - from.yM;
  const left = (1 - b * b) / (4 * b);
  return {
    xM: (from.xM + to.xM) / 2 - dy * left,
    yM: (from.yM + to.yM) / 2 + dx * left,
    radiusM: (Math.hypot(dx, dy) * (1 + b * b)) / (4 * Math.abs(b)),
  };
}

/** The leftmost, rightmost, highest and lowest points of a circle that lie on the bent edge. */
function outermost(from: OutlinePoint, to: OutlinePoint): { xM: number; yM: number }[] {
  if (from.bulge === 0) return [];
  const arc = arcOf(from, to);
  const towards: readonly (readonly [number, number])[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ];
  return towards
    .map(([x, y]) => ({ xM: arc.xM + x * arc.radiusM, yM: arc.yM + y * arc.radiusM }))
    .filter((place) => liesRightOfChord(from, to, place) === from.bulge > 0);
}

/** A counter-clockwise arc lies to the right of its chord, a clockwise one to the left. */
function liesRightOfChord(from: OutlinePoint, to: OutlinePoint, place: { xM: number; yM: number }): boolean {
  return (to.xM - from.xM) * (place.yM - from.yM) - (to.yM - from.yM) * (place.xM - from.xM) < 0;
}

function pointText(point: PaperPoint): string {
  return `${roundedText(point.xMm)} ${roundedText(point.yMm)}`;
}
