/**
 * Writes numbers with at most so many digits that count, with no power of ten, no sign between thousands and no noughts
 * at the end: `25400`, `0.0254`. Call it once for a number of digits: a formatter takes longer to make than to use.
 */
export function plainDigits(most: number): (value: number) => string {
  const { format } = new Intl.NumberFormat('en-US', { useGrouping: false, maximumSignificantDigits: most });
  return (value) => format(value);
}
