/** What a made-up job is like. */
export interface SampleShape {
  /** Channels of each amplifier. */
  readonly amplifiers: readonly number[];
  readonly processor: boolean;
  readonly secondBattery: boolean;
  readonly boardWidthM: number;
  readonly boardHeightM: number;
  readonly paper: 'letter' | 'a4';
  readonly units: 'inch' | 'millimetre';
  readonly released: boolean;
  /** The first fuse has no rating, and no operating point is solved. */
  readonly unsolved: boolean;
  readonly longNames: boolean;
}

/** A job of middle size. */
export const middling: SampleShape = {
  amplifiers: [4, 1],
  processor: true,
  secondBattery: false,
  boardWidthM: 0.9,
  boardHeightM: 0.45,
  paper: 'letter',
  units: 'inch',
  released: false,
  unsolved: false,
  longNames: false,
};

/** 1 to n. */
export const count = (n: number): number[] => Array.from({ length: n }, (_, index) => index + 1);
