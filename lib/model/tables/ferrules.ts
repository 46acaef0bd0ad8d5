/** An insulated wire-end ferrule. */
export interface Ferrule {
  readonly areaMm2: number;
  /** Collar colour after DIN 46228-4. Some makers follow another series: print the size, never the colour alone. */
  readonly colour: string;
}

/** Sizes and collar colours, DIN 46228-4; 35 mm2 is made, its colour is left to the maker. */
export const ferrules: readonly Ferrule[] = [
  { areaMm2: 0.5, colour: 'white' },
  { areaMm2: 0.75, colour: 'grey' },
  { areaMm2: 1, colour: 'red' },
  { areaMm2: 1.5, colour: 'black' },
  { areaMm2: 2.5, colour: 'blue' },
  { areaMm2: 4, colour: 'grey' },
  { areaMm2: 6, colour: 'yellow' },
  { areaMm2: 10, colour: 'red' },
  { areaMm2: 16, colour: 'blue' },
  { areaMm2: 25, colour: 'yellow' },
  { areaMm2: 35, colour: 'by maker' },
];

/**
 * The ferrule for a conductor: the next size up from its area, never the nearest; null above 35 mm2 (a lug,
 * then). A conductor of just a ferrule's area takes that ferrule.
 */
export function ferruleFor(areaMm2: number): Ferrule | null {
  return ferrules.find((ferrule) => ferrule.areaMm2 >= areaMm2 - 1e-9) ?? null;
}

/** Twin ferrules are made to 2 x 16 mm2 and are not in DIN 46228-4. */
export const largestTwinMm2 = 16;
