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

/** Which way a printed figure may err: what must be carried up, what may be carried down, the rest to the nearest. */
export type Direction = 'up' | 'down' | 'nearest';

/** The whole number of steps that a count of steps is written as; halves of the nearest away from zero, never -0. */
export function wholeSteps(steps: number, direction: Direction): number {
  if (direction === 'up') return wholeUp(steps) + 0;
  if (direction === 'down') return wholeDown(steps) + 0;
  // Twelve digits first: 0.346075 / 0.0254 is 13.625 and not a hair below the half.
  const count = Math.floor(Number(Math.abs(steps).toPrecision(12)) + 0.5);
  return steps < 0 ? 0 - count : count;
}
