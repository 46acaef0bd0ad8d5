import { type Traced, traced } from '../model/trace.ts';

/** The box of a space that equipment stands in, metres: along its mounting plane, and the depth before it. */
export interface CavityBox {
  readonly widthM: number;
  readonly heightM: number;
  readonly depthM: number;
  /** Whether its mounting plane stands, or lies like a floor. */
  readonly plane: 'standing' | 'lying';
}

/** What is known of the walls of a cavity. */
export interface CavityWalls {
  readonly box: CavityBox;
  /** Air in it, m3; null where nobody measured it. */
  readonly airM3: number | null;
  /** The surface that gives off heat, m2, as told; null where it follows from the box and the air. */
  readonly surfaceM2: number | null;
}

const source =
  'effective cooling surface of an enclosure: VDE 0660 part 500, as published by makers of enclosures';

/**
 * Effective cooling surface of a cavity behind trim, m2: of its walls those that give off heat, each by its share. A
 * standing one is the middle enclosure of a row at a wall with its top covered, A = 1.4 W H + 0.7 W D + D H (VDE 0660
 * part 500); a lying one has by the same shares its top covered and all four sides, A = 0.7 W H + (W + H) D. Where
 * more air than that box holds cools the equipment, its walls are at least those of a cube of that air, 3.1 V^(2/3).
 */
export function coolingSurface({ box, airM3, surfaceM2 }: CavityWalls): Traced<number> {
  if (surfaceM2 !== null)
    return traced(surfaceM2, 'm2', {
      origin: 'given',
      rule: 'cavity-surface',
      citation: "the vehicle's data",
    });
  const { widthM: w, heightM: h, depthM: d, plane } = box;
  const ofBox = plane === 'standing' ? 1.4 * w * h + 0.7 * w * d + d * h : 0.7 * w * h + (w + h) * d;
  const ofAir = airM3 === null ? 0 : 3.1 * airM3 ** (2 / 3);
  const value = Math.max(ofBox, ofAir);
  const boxFormula = plane === 'standing' ? '1.4 W H + 0.7 W D + D H' : '0.7 W H + (W + H) D';
  return traced(value, 'm2', {
    rule: 'cavity-surface',
    formula: ofAir > ofBox ? '3.1 V^(2/3): the walls of a cube of its air' : boxFormula,
    citation: source,
    inputs: [
      ['W', w, 'm'],
      ['H', h, 'm'],
      ['D', d, 'm'],
      ...(airM3 === null ? [] : [['V', airM3, 'm3'] as const]),
    ],
  });
}
