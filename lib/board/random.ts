/** A seeded source of numbers from 0 up to 1: the same seed gives the same numbers on every machine. */
export type Random = () => number;

/**
 * A source of pseudo-random numbers: a counter stepped by an odd constant, then mixed by xor, shift and
 * multiply (the finaliser of MurmurHash3, public domain). Good enough to search with, not to keep secrets with.
 */
export function seeded(seed: number): Random {
  let counter = seed >>> 0;
  return () => {
    counter = (counter + 0x9e3779b9) >>> 0;
    let mixed = counter;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}
