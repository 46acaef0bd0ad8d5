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

/** Walls that give off heat, each by its share, m2. */
function wallsM2({ widthM: w, heightM: h, depthM: d, plane }: CavityBox): number {
  return plane === 'standing' ? 1.4 * w * h + 0.7 * w * d + d * h : 0.7 * w * h + (w + h) * d;
}

/** The sides of a box that are left as they are while the others grow alike: all but all three. */
const keptSides = [[0, 1], [0, 2], [1, 2], [0], [1], [2], []] as const;

/** Of the boxes that hold another and so much air (m3) the one whose walls give off least: the extra air is nowhere told. */
function leastHolding(box: CavityBox, airM3: number): CavityBox {
  const sides = [box.widthM, box.heightM, box.depthM];
  const grown = keptSides.flatMap((kept): CavityBox[] => {
    const keptM = kept.reduce((product: number, side) => product * (sides[side] ?? 0), 1);
    const sideM = (airM3 / keptM) ** (1 / (3 - kept.length));
    const [widthM = 0, heightM = 0, depthM = 0] = sides.map((own, side) =>
      kept.some((one) => one === side) ? own : sideM,
    );
    const holds = [widthM, heightM, depthM].every((own, side) => own >= (sides[side] ?? 0) - 1e-9);
    return holds ? [{ widthM, heightM, depthM, plane: box.plane }] : [];
  });
  const [least = box] = grown.toSorted((a, b) => wallsM2(a) - wallsM2(b));
  return least;
}

/**
 * Effective cooling surface of a cavity behind trim, m2: of its walls those that give off heat, each by its share. A
 * standing one is the middle enclosure of a row at a wall with its top covered, A = 1.4 W H + 0.7 W D + D H (VDE 0660
 * part 500); a lying one has by the same shares its top covered and all four sides, A = 0.7 W H + (W + H) D: what it
 * lies on counts for none. Where more air than that box holds cools the equipment, the box is taken as large as holds
 * it, grown to that side by which its walls give off least.
 */
export function coolingSurface({ box, airM3, surfaceM2 }: CavityWalls): Traced<number> {
  if (surfaceM2 !== null)
    return traced(surfaceM2, 'm2', {
      origin: 'given',
      rule: 'cavity-surface',
      citation: "the vehicle's data",
    });
  const boxM3 = box.widthM * box.heightM * box.depthM;
  const walls = airM3 !== null && airM3 > boxM3 ? leastHolding(box, airM3) : box;
  const shares = box.plane === 'standing' ? '1.4 W H + 0.7 W D + D H' : '0.7 W H + (W + H) D';
  return traced(wallsM2(walls), 'm2', {
    rule: 'cavity-surface',
    formula: walls === box ? shares : `${shares}, of the box grown to hold V`,
    citation: source,
    inputs: [
      ['W', walls.widthM, 'm'],
      ['H', walls.heightM, 'm'],
      ['D', walls.depthM, 'm'],
      ...(airM3 === null ? [] : [['V', airM3, 'm3'] as const]),
    ],
  });
}
