import type { GrainWay } from '../../model/outline.ts';
import type { Point } from '../shape/point.ts';

/** A sheet as it lies in a board: its stiffness both ways, and its weight. x runs to the right of the board, y up. */
export interface Sheet {
  readonly thicknessM: number;
  /** Moduli of elasticity in bending along x and y, Pa. */
  readonly modulusXPa: number;
  readonly modulusYPa: number;
  /** Shear modulus of the panel in its plane: what it twists by, Pa. */
  readonly shearPa: number;
  /** The geometric mean of its two Poisson's ratios, which their symmetry asks for: v_x / E_x = v_y / E_y. */
  readonly poisson: number;
  readonly densityKgM3: number;
}

/** A sheet as it may lie in a board, with the way that its grain runs then; null where it has none. */
export interface LyingSheet {
  readonly grain: GrainWay | null;
  readonly sheet: Sheet;
}

/** What is known of a sheet that is alike both ways. */
export interface EvenSheet {
  readonly thicknessM: number;
  readonly modulusPa: number;
  readonly poisson: number;
  readonly densityKgM3: number;
}

/** A sheet that is alike both ways: G = E / 2 (1 + v). */
export function evenSheet({ thicknessM, modulusPa, poisson, densityKgM3 }: EvenSheet): Sheet {
  const both = { modulusXPa: modulusPa, modulusYPa: modulusPa, shearPa: modulusPa / (2 * (1 + poisson)) };
  return { thicknessM, ...both, poisson, densityKgM3 };
}

/** The same sheet, cut a quarter turn round. */
export function quarterTurned(sheet: Sheet): Sheet {
  return { ...sheet, modulusXPa: sheet.modulusYPa, modulusYPa: sheet.modulusXPa };
}

/** Bending and twisting stiffness of a plate, N m: moments by curvature. */
export interface PlateStiffness {
  readonly dxNm: number;
  readonly dyNm: number;
  /** What one curvature adds to the moment across it. */
  readonly d1Nm: number;
  /** Twisting: G t^3 / 12. */
  readonly dxyNm: number;
}

/**
 * Stiffness of an orthotropic plate (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, chapter 11):
 * Dx = Ex t^3 / 12 (1 - vx vy), Dy likewise, D1 = v sqrt(Dx Dy), Dxy = G t^3 / 12, v the geometric mean of the two
 * Poisson's ratios. Alike both ways it is the D, v D and D (1 - v) / 2 of an even plate.
 */
export function plateStiffness(sheet: Sheet): PlateStiffness {
  const { thicknessM, modulusXPa, modulusYPa, shearPa, poisson } = sheet;
  const cubeM3 = thicknessM ** 3 / 12;
  const [dxNm, dyNm] = [modulusXPa, modulusYPa].map((pa) => (pa * cubeM3) / (1 - poisson ** 2));
  const [dx, dy] = [dxNm ?? 0, dyNm ?? 0];
  return { dxNm: dx, dyNm: dy, d1Nm: poisson * Math.sqrt(dx * dy), dxyNm: shearPa * cubeM3 };
}

/**
 * Modulus in a direction of the plane, Pa: 1/E = c^4/Ex + s^4/Ey + c^2 s^2 (1/G - 2 v / sqrt(Ex Ey)), c and s of the
 * angle to x (Lekhnitskii, Anisotropic Plates; textbooks of composite materials).
 */
export function modulusAlong({ modulusXPa, modulusYPa, shearPa, poisson }: Sheet, { xM, yM }: Point): number {
  const lengthM = Math.hypot(xM, yM);
  const [c2, s2] = [(xM / lengthM) ** 2, (yM / lengthM) ** 2];
  const coupled = 1 / shearPa - (2 * poisson) / Math.sqrt(modulusXPa * modulusYPa);
  return 1 / (c2 ** 2 / modulusXPa + s2 ** 2 / modulusYPa + c2 * s2 * coupled);
}

/**
 * Modulus that plywood is sure of when it is pulled or bent in its own plane, Pa, from one in bending across the
 * plane: never above the mean of the two bending moduli. Both pairs, of one veneer laid both ways, have the same sum,
 * and the plies along the face are at least as many as those across (theory of laminates).
 */
export function inPlaneModulus(bendingPa: number, { modulusXPa, modulusYPa }: Sheet): number {
  return Math.min(bendingPa, (modulusXPa + modulusYPa) / 2);
}
