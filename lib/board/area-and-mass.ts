import { type Traced, traced } from '../model/trace.ts';
import { type Moments, momentsOf } from './shape/bulge.ts';
import type { BoardShape } from './shape/outline.ts';
import type { Point } from './shape/point.ts';

const planeAreas = 'plane geometry: shoelace formula and circular segments';

/** Moments of the material: outline less cut-outs and round holes. */
function materialMoments(shape: BoardShape): Moments {
  const loops = [shape.outline, ...shape.cutouts].map(momentsOf);
  const holes = shape.holes.map(({ xM, yM, diameterM }) => {
    const areaM2 = (-Math.PI * diameterM ** 2) / 4;
    return { areaM2, xM3: areaM2 * xM, yM3: areaM2 * yM };
  });
  return [...loops, ...holes].reduce((a, b) => ({
    areaM2: a.areaM2 + b.areaM2,
    xM3: a.xM3 + b.xM3,
    yM3: a.yM3 + b.yM3,
  }));
}

/** Area of one face of the board, m2, exact for arcs; cut-outs and holes taken off. */
export function boardArea(shape: BoardShape): Traced<number> {
  const outer = momentsOf(shape.outline).areaM2;
  const openings = shape.cutouts.reduce((sum, loop) => sum - momentsOf(loop).areaM2, 0);
  const holes = shape.holes.reduce((sum, { diameterM }) => sum + (Math.PI * diameterM ** 2) / 4, 0);
  return traced(materialMoments(shape).areaM2, 'm2', {
    rule: 'board-area',
    formula: 'outline - cut-outs - holes',
    citation: planeAreas,
    inputs: [
      ['outline', outer, 'm2'],
      ['cut-outs', openings, 'm2'],
      ['holes', holes, 'm2'],
    ],
  });
}

/** Mass of the bare board, kg: area times thickness (m) times density (kg/m3), and its ribs. */
export function boardMass(
  shape: BoardShape,
  thicknessM: number,
  densityKgM3: number,
  ribsKg = 0,
): Traced<number> {
  const area = boardArea(shape);
  const formula = `area x thickness x density${ribsKg > 0 ? ' + ribs' : ''}`;
  return traced(area.value * thicknessM * densityKgM3 + ribsKg, 'kg', {
    rule: 'board-mass',
    formula,
    citation: 'mass of a body of even density',
    inputs: [
      ['area', area.value, 'm2'],
      ['thickness', thicknessM, 'm'],
      ['density', densityKgM3, 'kg/m3'],
      ...(ribsKg > 0 ? [['ribs', ribsKg, 'kg'] as const] : []),
    ],
  });
}

/** Centroid of the bare board, metres from the datum. */
export function boardCentroid(shape: BoardShape): Point {
  const { areaM2, xM3, yM3 } = materialMoments(shape);
  return { xM: xM3 / areaM2, yM: yM3 / areaM2 };
}

/** A mass at a place, kg and metres. */
export interface PlacedMass extends Point {
  readonly massKg: number;
}

/** Centre of gravity of masses in the plane of the board; the first one counts where none weighs anything. */
export function centreOfMass(masses: readonly PlacedMass[]): Point {
  const total = masses.reduce((sum, { massKg }) => sum + massKg, 0);
  const [first] = masses;
  if (total === 0) return { xM: first?.xM ?? 0, yM: first?.yM ?? 0 };
  return {
    xM: masses.reduce((sum, { massKg, xM }) => sum + massKg * xM, 0) / total,
    yM: masses.reduce((sum, { massKg, yM }) => sum + massKg * yM, 0) / total,
  };
}
