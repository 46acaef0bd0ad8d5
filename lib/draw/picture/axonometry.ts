import type { Point } from '../../board/shape/point.ts';
import { at, type PaperPoint } from '../paper.ts';

/** A place in space, metres: x to the right and y upwards on a board, z off its mounting side. */
export interface SpacePoint extends Point {
  readonly zM: number;
}

/** How an axis is seen: its direction, counter-clockwise from level to the right, and its scale. */
export interface SeenAxis {
  readonly angleDeg: number;
  readonly scale: number;
}

/**
 * Dimetric axonometry after ISO 5456-3, 5.2: two axes in full scale, one level but for 7 degrees and one upright, and
 * the third in half of it at 42 degrees. It is for things whose one side is of most importance: here the mounting side
 * of a board, which is seen nearly square, with what stands on it from above and from its right.
 */
export const dimetric: { readonly [K in 'x' | 'y' | 'z']: SeenAxis } = {
  x: { angleDeg: -7, scale: 1 },
  y: { angleDeg: 90, scale: 1 },
  z: { angleDeg: 180 + 42, scale: 0.5 },
};

type Vector = readonly [x: number, y: number, z: number];

const radians = (deg: number): number => (deg * Math.PI) / 180;
const { x, y, z } = dimetric;
const share = (of: (rad: number) => number): Vector => [
  x.scale * of(radians(x.angleDeg)),
  y.scale * of(radians(y.angleDeg)),
  z.scale * of(radians(z.angleDeg)),
];
const [right, upward] = [share(Math.cos), share(Math.sin)];

/** The direction towards the eye, of length 1: what differs by it alone falls on one point of the picture. */
export const sight: Vector = unit(cross(right, upward));

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(vector: Vector): Vector {
  const length = Math.hypot(...vector);
  return [vector[0] / length, vector[1] / length, vector[2] / length];
}

/** The inner product of a direction with a place or another direction. */
export function along(direction: Vector, { xM, yM, zM }: SpacePoint): number {
  return direction[0] * xM + direction[1] * yM + direction[2] * zM;
}

/** How far to the right and up a place is seen from the datum, metres of the thing. */
export function seen(place: SpacePoint): Point {
  return { xM: along(right, place), yM: along(upward, place) };
}

/** How large a picture is, and where the datum of its board stands on paper. */
export interface PictureView {
  readonly mmPerM: number;
  readonly datum: PaperPoint;
}

/** The place on paper of a place in space. */
export function inPicture({ mmPerM, datum }: PictureView, place: SpacePoint): PaperPoint {
  const { xM, yM } = seen(place);
  return at(datum.xMm + xM * mmPerM, datum.yMm - yM * mmPerM);
}

/** A place part of the way from one to another. */
export function between(from: SpacePoint, to: SpacePoint, part: number): SpacePoint {
  const mix = (a: number, b: number): number => a + (b - a) * part;
  return { xM: mix(from.xM, to.xM), yM: mix(from.yM, to.yM), zM: mix(from.zM, to.zM) };
}
