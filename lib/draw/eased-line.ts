import { directionOf, distanceMm } from './bent-line.ts';
import { at, type PaperPoint } from './paper.ts';

/**
 * A line of square corners with its jogs eased as a wire lies that is bent to a radius: two corners that turn opposite
 * ways, nearer than twice the radius, become two arcs that run into one another, which meet at the angle t with
 * cos t = 1 - d / 2R, over 2 R sin t along the way (plane geometry). Their corners lie where both tangents meet. A jog
 * without that much straight line on either side, half of a leg that ends in another bend, stays as it is.
 */
export function easedJogs(line: readonly PaperPoint[], radiusMm: number): PaperPoint[] {
  const last = line.length - 1;
  const points = [...line];
  for (let index = 1; index + 1 < last; index += 1) {
    const [a, b, c, d] = line.slice(index - 1, index + 3);
    const [along, aside, on] = [directionOf(a, b), directionOf(b, c), directionOf(c, d)];
    if (!a || !b || !c || !d || !along || !aside || !on) continue;
    const asideMm = distanceMm(b, c);
    const isJog = along.xMm * on.xMm + along.yMm * on.yMm > 1 - 1e-9;
    const isSquare = Math.abs(along.xMm * aside.xMm + along.yMm * aside.yMm) < 1e-9;
    if (!isJog || !isSquare || asideMm >= 2 * radiusMm) continue;
    const cos = 1 - asideMm / (2 * radiusMm);
    const sin = Math.sqrt(1 - cos * cos);
    const freeMm = Math.min(
      distanceMm(a, b) / (index === 1 ? 1 : 2),
      distanceMm(c, d) / (index + 2 === last ? 1 : 2),
    );
    if (freeMm < radiusMm * sin) continue;
    const backMm = (asideMm / 2) * (cos / sin);
    points[index] = at(b.xMm - along.xMm * backMm, b.yMm - along.yMm * backMm);
    points[index + 1] = at(c.xMm + along.xMm * backMm, c.yMm + along.yMm * backMm);
  }
  return points;
}
