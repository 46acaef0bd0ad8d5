/** Rounds every number in a text such as path data to three decimals; never `-0`, never an exponent. */
export function roundNumbers(text: string): string {
  return text.replace(/-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi, (digits) => roundedText(Number(digits)));
}

/** One number to three decimals, without trailing noughts. */
export function roundedText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} can't be drawn`);
  return String(Number(value.toFixed(3)) + 0);
}
