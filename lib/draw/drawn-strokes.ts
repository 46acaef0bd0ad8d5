import { beside } from './bent-line.ts';
import { DrawnElement } from './drawn-node.ts';
import type { Obstacle } from './lettering/obstacle-index.ts';
import { at, boxRound, type PaperPoint, segmentsOf } from './paper.ts';
import type { Drawing } from './surface.ts';

/** A stroke broader than this keeps texts off by its edges, not by its middle alone; they count so far inside it. */
const broadMm = 1.4;
const withinMm = 0.3;

/** So many chords stand for a whole circle; for an arc, its share of them. */
const chordsPerTurn = 24;

/**
 * Every stroke drawn so far as obstacles for labels, by the subject that it belongs to; a hatched shape counts
 * as a whole. Read from the drawing itself, so that nothing drawn can be forgotten.
 */
export function strokeObstacles(drawing: Drawing): Obstacle[] {
  const found: Obstacle[] = [];
  collect(drawing, drawing.root, 'drawing', found);
  return found;
}

function collect(drawing: Drawing, element: DrawnElement, subject: string, found: Obstacle[]): void {
  const { nodeName: name } = element;
  if (name === 'defs') return;
  const own = element.getAttribute('data-of') ?? subject;
  if (name === 'path' || name === 'circle') {
    const known = drawing.strokes.get(element);
    const strokes = known ?? strokesOf(element, own);
    if (!known) drawing.strokes.set(element, strokes);
    for (const stroke of strokes) found.push(stroke);
  }
  for (const child of element.childNodes)
    if (child instanceof DrawnElement) collect(drawing, child, own, found);
}

function strokesOf(element: DrawnElement, id: string): Obstacle[] {
  const isHatched = element.getAttribute('fill')?.startsWith('url(') === true;
  const isStroked = element.hasAttribute('stroke');
  if (!isHatched && !isStroked) return [];
  const lines =
    element.nodeName === 'path' ? pathPoints(element.getAttribute('d') ?? '') : [circlePoints(element)];
  const points = lines.flat();
  const whole = isHatched && points.length > 0 ? [{ id, box: boxRound(points) }] : [];
  if (!isStroked) return whole;
  const wideMm = Number(element.getAttribute('stroke-width') ?? 0);
  const edges =
    wideMm > broadMm
      ? lines.flatMap((line) => [1, -1].map((way) => beside(line, (way * wideMm) / 2 - way * withinMm)))
      : [];
  return [
    ...whole,
    ...[...lines, ...edges].flatMap((line) => segmentsOf(line).map((segment) => ({ id, segment }))),
  ];
}

function circlePoints(circle: DrawnElement): PaperPoint[] {
  const value = (name: string): number => Number(circle.getAttribute(name) ?? 0);
  const [x, y, radius] = [value('cx'), value('cy'), value('r')];
  return Array.from({ length: chordsPerTurn + 1 }, (_, index) => {
    const angle = (index * 2 * Math.PI) / chordsPerTurn;
    return at(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
  });
}

/** The lines of path data that is written with M, L, A, H, V and Z in absolute coordinates. */
export function pathPoints(d: string): PaperPoint[][] {
  const lines: PaperPoint[][] = [];
  for (const [, command = '', tail = ''] of d.matchAll(/([MLAHVZ])([^MLAHVZ]*)/g)) {
    const numbers = [...tail.matchAll(/-?[\d.]+/g)].map(([digits]) => Number(digits));
    const line = lines.at(-1);
    if (command === 'M') lines.push([at(numbers[0] ?? 0, numbers[1] ?? 0)]);
    else if (line) line.push(...nextPoints(command, numbers, line));
  }
  return lines;
}

function nextPoints(command: string, numbers: readonly number[], line: readonly PaperPoint[]): PaperPoint[] {
  const last = line.at(-1) ?? at(0, 0);
  const [a = 0, b = 0] = numbers;
  if (command === 'Z') return line[0] ? [line[0]] : [];
  if (command === 'H') return [at(a, last.yMm)];
  if (command === 'V') return [at(last.xMm, a)];
  if (command === 'L') return [at(a, b)];
  return arcPoints(last, numbers);
}

/** Points on a circular arc of path data: radius, radius, 0, large, sweep, end. */
function arcPoints(from: PaperPoint, numbers: readonly number[]): PaperPoint[] {
  const [radius = 0, , , large = 0, sweep = 0, x = 0, y = 0] = numbers;
  const to = at(x, y);
  const dx = to.xMm - from.xMm;
  const dy = to.yMm - from.yMm;
  const half = Math.hypot(dx, dy) / 2;
  if (half === 0) return [to];
  const off = Math.sqrt(Math.max(0, radius * radius - half * half)) * (large === sweep ? -1 : 1);
  const centre = at(
    (from.xMm + to.xMm) / 2 - (dy / (2 * half)) * off,
    (from.yMm + to.yMm) / 2 + (dx / (2 * half)) * off,
  );
  const start = Math.atan2(from.yMm - centre.yMm, from.xMm - centre.xMm);
  const end = Math.atan2(to.yMm - centre.yMm, to.xMm - centre.xMm);
  const turn =
    (sweep === 1 ? 1 : -1) *
    (((((end - start) * (sweep === 1 ? 1 : -1)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI));
  const steps = Math.max(2, Math.ceil((Math.abs(turn) / (2 * Math.PI)) * chordsPerTurn));
  return Array.from({ length: steps }, (_, index) => {
    const angle = start + (turn * (index + 1)) / steps;
    return at(centre.xMm + radius * Math.cos(angle), centre.yMm + radius * Math.sin(angle));
  });
}
