import { wholeDown, wholeUp } from '../model/safe-rounding.ts';

/** A number to so many figures, rounded up: for what must be carried. 104.4 to three is 105. */
export function figuresUp(value: number, figures: number): number {
  return toFigures(value, figures, wholeUp);
}

/** A number to so many figures, rounded down: for what may be carried. */
export function figuresDown(value: number, figures: number): number {
  return toFigures(value, figures, wholeDown);
}

function toFigures(value: number, figures: number, rounded: (lasts: number) => number): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const last = 10 ** (Math.floor(Math.log10(Math.abs(value))) - figures + 1);
  return Number((rounded(value / last) * last).toPrecision(figures + 1));
}
