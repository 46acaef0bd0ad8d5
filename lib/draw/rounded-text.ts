/** Rounds every number in a text such as path data to three decimals; never `-0`, never an exponent. */
export function roundNumbers(text: string): string {
  // What is short enough stays as it is: an integer, or up to three decimals of which the last is no nought.
  return text.replace(/-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi, (digits) =>
    /^(?:-?[1-9]\d*|0|-?(?:0|[1-9]\d*)\.\d{0,2}[1-9])$/.test(digits) ? digits : roundedText(Number(digits)),
  );
}

/** One number to three decimals, without trailing noughts. */
export function roundedText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} can't be drawn`);
  const thousandths = value * 1000;
  const nearest = Math.round(thousandths);
  // Well off the middle between two thousandths, and small enough to be exact, the quotient is the nearest number.
  const isPlain = Math.abs(thousandths - nearest) < plainShare && Math.abs(nearest) < plainBelow;
  return String((isPlain ? nearest / 1000 : Number(value.toFixed(3))) + 0);
}

const plainShare = 0.499;
const plainBelow = 1e9;
