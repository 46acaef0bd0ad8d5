/** Digits of a number that every machine agrees on. */
const digits = 9;

/** A plan as its golden copy holds it: JSON with keys as they stand, every number rounded to nine digits. */
export function goldenText(plan: unknown): string {
  const rounded = (_key: string, value: unknown): unknown =>
    typeof value === 'number' ? Number(value.toPrecision(digits)) : value;
  return `${JSON.stringify(plan, rounded, 1)}\n`;
}
