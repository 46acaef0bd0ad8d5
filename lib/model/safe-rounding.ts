/** What a sum or a product of written numbers may be off by without meaning more. */
const noise = 1e-6;

/** The next whole number up: for what must be carried. A millionth over one is noise. */
export function wholeUp(value: number): number {
  return Math.ceil(value - noise);
}

/** The next whole number down: for what may be carried. */
export function wholeDown(value: number): number {
  return Math.floor(value + noise);
}
