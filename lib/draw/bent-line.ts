import { at, type PaperPoint } from './paper.ts';
import { roundedText } from './rounded-text.ts';

/** A line beside another, so far to the left of the way that it runs (to the right where negative), its corners mitred. */
export function beside(points: readonly PaperPoint[], offMm: number): PaperPoint[] {
  const line = withoutRepeats(points);
  if (offMm === 0 || line.length < 2) return line;
  return line.map((point, index) => {
    const before = directionOf(line[index - 1], point);
    const after = directionOf(point, line[index + 1]);
    const into = before ?? after;
    const out = after ?? before;
    if (!into || !out) return point;
    // The mitre: both offset lines meet where the point moves along the sum of their normals.
    const [nx, ny] = [into.yMm + out.yMm, -into.xMm - out.xMm];
    const share = offMm / Math.max(0.2, 1 + into.xMm * out.xMm + into.yMm * out.yMm);
    return at(point.xMm + nx * share, point.yMm + ny * share);
  });
}

/** Points without those that repeat the one before. */
export function withoutRepeats(points: readonly PaperPoint[]): PaperPoint[] {
  return points.filter((point, index) => {
    const before = points[index - 1];
    return before === undefined || distanceMm(before, point) > 1e-6;
  });
}

export function distanceMm(a: PaperPoint, b: PaperPoint): number {
  return Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
}

/** The unit vector from one point to the next; null where there is no next. */
export function directionOf(from: PaperPoint | undefined, to: PaperPoint | undefined): PaperPoint | null {
  if (!from || !to) return null;
  const long = distanceMm(from, to);
  return long < 1e-9 ? null : at((to.xMm - from.xMm) / long, (to.yMm - from.yMm) / long);
}

/** A corner as it is bent: where the arc begins and ends, its radius, and which way it turns on paper. */
interface Bend {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly radiusMm: number;
  readonly clockwise: boolean;
}

/** How the corners of a line are bent: the radius of what it lies beside, and how far to the left of that it lies. */
export interface Bending {
  readonly radiusMm: number;
  readonly offMm: number;
}

/** Bends of the inner points of a line; a corner with too short a leg is bent as far as it goes. */
function bendsOf(line: readonly PaperPoint[], { radiusMm, offMm }: Bending): (Bend | null)[] {
  return line.map((corner, index): Bend | null => {
    const [before, after] = [line[index - 1], line[index + 1]];
    const into = directionOf(before, corner);
    const out = directionOf(corner, after);
    if (!before || !after || !into || !out) return null;
    const turn = Math.acos(Math.min(1, Math.max(-1, into.xMm * out.xMm + into.yMm * out.yMm)));
    if (turn < 1e-3 || turn > Math.PI - 1e-3) return null;
    // A leg between two corners is shared by both bends.
    const legs = [
      distanceMm(before, corner) / (index === 1 ? 1 : 2),
      distanceMm(corner, after) / (index === line.length - 2 ? 1 : 2),
    ];
    const clockwise = into.xMm * out.yMm - into.yMm * out.xMm > 0;
    const ownMm = Math.max(0.1, radiusMm + (clockwise ? offMm : -offMm));
    const reachMm = Math.min(ownMm * Math.tan(turn / 2), ...legs);
    return {
      from: at(corner.xMm - into.xMm * reachMm, corner.yMm - into.yMm * reachMm),
      to: at(corner.xMm + out.xMm * reachMm, corner.yMm + out.yMm * reachMm),
      radiusMm: reachMm / Math.tan(turn / 2),
      clockwise,
    };
  });
}

/** Path data of a line with its corners bent. */
export function bentPath(points: readonly PaperPoint[], bending: Bending): string {
  const line = withoutRepeats(points);
  const bends = bendsOf(line, bending);
  const write = ({ xMm, yMm }: PaperPoint): string => `${roundedText(xMm)} ${roundedText(yMm)}`;
  const steps = line.map((point, index) => {
    const bend = bends[index];
    if (!bend) return `${index === 0 ? 'M' : 'L'}${write(point)}`;
    const radius = roundedText(bend.radiusMm);
    return `L${write(bend.from)}A${radius} ${radius} 0 0 ${bend.clockwise ? 1 : 0} ${write(bend.to)}`;
  });
  return steps.join('');
}

const chordsPerBend = 6;

/** The same line as points, each bend in short chords. */
export function bentPoints(points: readonly PaperPoint[], bending: Bending): PaperPoint[] {
  const line = withoutRepeats(points);
  const bends = bendsOf(line, bending);
  return line.flatMap((point, index) => {
    const bend = bends[index];
    return bend ? chordsOf(bend) : [point];
  });
}

function chordsOf({ from, to, radiusMm, clockwise }: Bend): PaperPoint[] {
  const half = distanceMm(from, to) / 2;
  const middle = at((from.xMm + to.xMm) / 2, (from.yMm + to.yMm) / 2);
  const along = directionOf(from, to);
  if (!along || radiusMm <= 0) return [from, to];
  const off = Math.sqrt(Math.max(0, radiusMm * radiusMm - half * half)) * (clockwise ? 1 : -1);
  const centre = at(middle.xMm - along.yMm * off, middle.yMm + along.xMm * off);
  const start = Math.atan2(from.yMm - centre.yMm, from.xMm - centre.xMm);
  const sweep = 2 * Math.asin(Math.min(1, half / radiusMm)) * (clockwise ? 1 : -1);
  return Array.from({ length: chordsPerBend + 1 }, (_, step) => {
    const angle = start + (sweep * step) / chordsPerBend;
    return at(centre.xMm + radiusMm * Math.cos(angle), centre.yMm + radiusMm * Math.sin(angle));
  });
}
