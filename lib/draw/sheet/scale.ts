import { at, type PaperPoint } from '../paper.ts';

/** Reductions and enlargements that a drawing may have (ISO 5455, mem): millimetres of the thing per millimetre of paper. */
export const scaleRatios = [0.2, 0.5, 1, 2, 5, 10, 20, 50, 100] as const;
export type ScaleRatio = (typeof scaleRatios)[number];

/** `1:10`, `1:1`, `5:1`. */
export function scaleText(ratio: ScaleRatio): string {
  return ratio >= 1 ? `1:${ratio}` : `${1 / ratio}:1`;
}

/** How places on a board (metres, x right, y up) come to stand on paper (millimetres, y down). */
export interface PlanView {
  readonly ratio: ScaleRatio;
  /** Where the datum stands on paper. */
  readonly datum: PaperPoint;
  /** Seen from the back: x runs to the left. */
  readonly mirrored: boolean;
}

/** The place on paper of a place on the board. */
export function onPaper(view: PlanView, place: { readonly xM: number; readonly yM: number }): PaperPoint {
  const xMm = lengthOnPaper(view, place.xM);
  return at(view.datum.xMm + (view.mirrored ? -xMm : xMm), view.datum.yMm - lengthOnPaper(view, place.yM));
}

/** Millimetres of paper of a length in metres. */
export function lengthOnPaper(view: PlanView, lengthM: number): number {
  return (lengthM * 1000) / view.ratio;
}

/** The place on the board of a place on paper. */
export function placeOnBoard(
  { ratio, datum, mirrored }: PlanView,
  { xMm, yMm }: PaperPoint,
): { readonly xM: number; readonly yM: number } {
  const acrossMm = mirrored ? datum.xMm - xMm : xMm - datum.xMm;
  return { xM: (acrossMm * ratio) / 1000, yM: ((datum.yMm - yMm) * ratio) / 1000 };
}
