import { standardGravity } from '../../model/quantity/gravity.ts';
import type { Point } from '../shape/point.ts';
import type { Region } from '../shape/region.ts';
import { addTo, type Banded, banded, factor, solve } from './banded.ts';
import { elementStiffness, gaussPoints, shapeAt } from './plate-element.ts';
import { type Mesh, makeMesh, type Spot, spotAt } from './plate-mesh.ts';
import { inPlaneModulus, modulusAlong, plateStiffness, type Sheet } from './sheet-stiffness.ts';

/** A straight stiffener of rectangular section, fastened to one face of the board. */
export interface Rib {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
  readonly widthM: number;
  readonly heightM: number;
  /** Along its length, Pa. */
  readonly modulusPa: number;
  readonly densityKgM3: number;
  /** Of a glued rib: the width of the board that works with it as a flange. Left out: it slides, as if only screwed. */
  readonly flangeM?: number;
}

/** Where the board is held. `clamped` holds its slope as well as its place. */
export interface Support extends Point {
  readonly clamped?: boolean;
}

/** A mass spread evenly over points. */
export interface SpreadMass {
  readonly massKg: number;
  readonly points: readonly Point[];
}

/** What is bent. */
export interface PlateCase {
  readonly region: Region;
  readonly sheet: Sheet;
  readonly ribs: readonly Rib[];
  readonly supports: readonly Support[];
  readonly masses: readonly SpreadMass[];
  /** Elements along the longer side; more is finer. Left out: 24. */
  readonly elements?: number;
}

/** The bent plate: greatest deflection under its own weight laid level, and its first natural frequency. */
export interface BentPlate {
  readonly sagM: number;
  readonly modeHz: number;
  readonly massKg: number;
}

interface PointMass {
  readonly spot: Spot;
  readonly shape: readonly number[];
  readonly massKg: number;
}

/**
 * Bends a thin orthotropic plate (Kirchhoff) on point supports under 1 g across it, by rectangular finite elements.
 * Deflection from K w = m g; first mode by inverse iteration on K and M. Elements that a cut-out covers in
 * part count by the share of material; ribs count by `ribBending`. Null where the supports leave the plate free to
 * move.
 */
export function bendPlate(plate: PlateCase): BentPlate | null {
  const mesh = makeMesh(plate.region, plate.elements ?? 24);
  if (mesh.cells.length === 0) return null;
  const masses = pointMasses(mesh, plate);
  const stiffness = factor(assemble(mesh, plate));
  if (!stiffness) return null;
  const load = loadOf(mesh, masses, () => standardGravity);
  const still = solve(stiffness, load);
  const deflection = masses.map((mass) => Math.abs(valueAt(still, mass)));
  for (let node = 0; node < mesh.nodes; node += 1) deflection.push(Math.abs(still[3 * node] ?? 0));
  const sagM = deflection.reduce((most, value) => Math.max(most, value), 0);
  // What tips freely comes out of rounding as kilometres of sag, if not as a pivot of nothing.
  if (!(sagM < 10 * mesh.spanM)) return null;
  return {
    sagM,
    modeHz: firstMode(mesh, stiffness, masses, still),
    massKg: masses.reduce((sum, { massKg }) => sum + massKg, 0),
  };
}

function assemble(mesh: Mesh, { sheet, ribs, supports }: PlateCase): Banded {
  const matrix = banded(3 * mesh.nodes, mesh.band);
  const plate = plateStiffness(sheet);
  const own = elementStiffness(mesh.element, plate);
  for (const { freedoms, share } of mesh.cells)
    for (const [i, row] of own.entries())
      for (const [j, value] of row.entries())
        if ((freedoms[i] ?? 0) >= (freedoms[j] ?? 0))
          addTo(matrix, freedoms[i] ?? 0, freedoms[j] ?? 0, share * value);
  for (const rib of ribs) addRib(matrix, mesh, rib, ribBending(rib, sheet));
  // Stiff enough to hold, soft enough to keep the digits: 1e6 times what bends one element.
  const hold = (1e6 * Math.max(plate.dxNm, plate.dyNm)) / mesh.element.widthM ** 2;
  for (const support of supports) {
    const spot = spotAt(mesh, support);
    addSquare(matrix, spot, shapeAt(mesh.element, spot.x, spot.y), hold);
    if (!support.clamped) continue;
    const reach = mesh.element.widthM ** 2;
    addSquare(matrix, spot, shapeAt(mesh.element, spot.x, spot.y, 1, 0), hold * reach);
    addSquare(matrix, spot, shapeAt(mesh.element, spot.x, spot.y, 0, 1), hold * reach);
  }
  return matrix;
}

/** Adds weight x row' row: a spring on what the row measures. */
function addSquare(matrix: Banded, spot: Spot, row: readonly number[], weight: number): void {
  for (const [i, a] of row.entries())
    for (const [j, b] of row.entries()) {
      const [p, q] = [spot.freedoms[i] ?? 0, spot.freedoms[j] ?? 0];
      if (p >= q) addTo(matrix, p, q, weight * a * b);
    }
}

/**
 * What a rib adds to the bending stiffness of the board along its line, N m2. Screwed, its own section alone, as if
 * it could slide: E I. Glued, by the parallel-axis theorem for a composite section, about the common neutral axis:
 * E I + e^2 (EA of rib x EA of flange) / (EA of rib + EA of flange), e between the two middles (Gere and Timoshenko,
 * Mechanics of Materials, composite beams). What the flange bends by itself is in the plate; it is pulled in its plane,
 * along the rib.
 */
export function ribBending(rib: Omit<Rib, 'id' | 'densityKgM3'>, sheet: Sheet): number {
  const own = (rib.modulusPa * rib.widthM * rib.heightM ** 3) / 12;
  const ribEA = rib.modulusPa * rib.widthM * rib.heightM;
  const along = { xM: rib.to.xM - rib.from.xM, yM: rib.to.yM - rib.from.yM };
  if (!rib.flangeM || Math.hypot(along.xM, along.yM) === 0) return own;
  const flangePa = inPlaneModulus(modulusAlong(sheet, along), sheet);
  const flangeEA = flangePa * sheet.thicknessM * rib.flangeM;
  if (!(flangeEA > 0 && ribEA > 0)) return own;
  const apartM = (rib.heightM + sheet.thicknessM) / 2;
  return own + (apartM ** 2 * ribEA * flangeEA) / (ribEA + flangeEA);
}

function addRib(matrix: Banded, mesh: Mesh, rib: Rib, bending: number): void {
  const [dx, dy] = [rib.to.xM - rib.from.xM, rib.to.yM - rib.from.yM];
  const lengthM = Math.hypot(dx, dy);
  const [c, s] = [dx / lengthM, dy / lengthM];
  for (const { point, shareM } of along(mesh, rib)) {
    const spot = spotAt(mesh, point);
    const [xx, xy, yy] = [
      shapeAt(mesh.element, spot.x, spot.y, 2, 0),
      shapeAt(mesh.element, spot.x, spot.y, 1, 1),
      shapeAt(mesh.element, spot.x, spot.y, 0, 2),
    ];
    const curvature = xx.map(
      (value, at) => c * c * value + 2 * c * s * (xy[at] ?? 0) + s * s * (yy[at] ?? 0),
    );
    addSquare(matrix, spot, curvature, bending * shareM);
  }
}

/** Points along a rib, each with its share of the length; four to an element. */
function along(mesh: Mesh, { from, to }: Rib): { point: Point; shareM: number }[] {
  const lengthM = Math.hypot(to.xM - from.xM, to.yM - from.yM);
  const pieces = Math.max(4, Math.ceil((4 * lengthM) / mesh.element.widthM));
  return Array.from({ length: lengthM > 0 ? pieces : 0 }, (_, at) => {
    const t = (at + 0.5) / pieces;
    const point = { xM: from.xM + t * (to.xM - from.xM), yM: from.yM + t * (to.yM - from.yM) };
    return { point, shareM: lengthM / pieces };
  });
}

function pointMasses(mesh: Mesh, { sheet, ribs, masses }: PlateCase): PointMass[] {
  const at = (spot: Spot, massKg: number) => ({
    spot,
    shape: shapeAt(mesh.element, spot.x, spot.y),
    massKg,
  });
  const cellKg = sheet.densityKgM3 * sheet.thicknessM * mesh.element.widthM * mesh.element.heightM;
  const own = mesh.cells.flatMap(({ freedoms, share }) =>
    gaussPoints(mesh.element).map(([x, y, part]) => at({ freedoms, x, y }, cellKg * share * part)),
  );
  const ribMasses = ribs.flatMap((rib) => {
    const perM = rib.densityKgM3 * rib.widthM * rib.heightM;
    return along(mesh, rib).map(({ point, shareM }) => at(spotAt(mesh, point), perM * shareM));
  });
  const spread = masses.flatMap(({ massKg, points }) =>
    points.map((point) => at(spotAt(mesh, point), massKg / points.length)),
  );
  return [...own, ...ribMasses, ...spread];
}

function valueAt(state: Float64Array, { spot, shape }: PointMass): number {
  return shape.reduce((sum, value, at) => sum + value * (state[spot.freedoms[at] ?? 0] ?? 0), 0);
}

/** The load of accelerations on the masses. */
function loadOf(
  mesh: Mesh,
  masses: readonly PointMass[],
  acceleration: (mass: PointMass) => number,
): Float64Array {
  const load = new Float64Array(3 * mesh.nodes);
  for (const mass of masses) {
    const force = mass.massKg * acceleration(mass);
    for (const [at, freedom] of mass.spot.freedoms.entries())
      load[freedom] = (load[freedom] ?? 0) + force * (mass.shape[at] ?? 0);
  }
  return load;
}

/** Inverse iteration from the bent shape: w' = K^-1 M w, f^2 = w'Mw / w'Mw' / 4 pi^2. */
function firstMode(mesh: Mesh, stiffness: Banded, masses: readonly PointMass[], start: Float64Array): number {
  let shape = start;
  let square = 0;
  for (let pass = 0; pass < 60; pass += 1) {
    const bent = solve(
      stiffness,
      loadOf(mesh, masses, (mass) => valueAt(shape, mass)),
    );
    let [both, own] = [0, 0];
    for (const mass of masses) {
      const [before, after] = [valueAt(shape, mass), valueAt(bent, mass)];
      both += mass.massKg * before * after;
      own += mass.massKg * after * after;
    }
    if (own === 0) return 0;
    const found = both / own;
    const scale = 1 / Math.sqrt(own);
    shape = bent.map((value) => value * scale);
    if (Math.abs(found - square) < 1e-8 * found) return Math.sqrt(found) / (2 * Math.PI);
    square = found;
  }
  return Math.sqrt(square) / (2 * Math.PI);
}
