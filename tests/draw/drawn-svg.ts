import type { PaperBox } from '../../lib/draw/paper.ts';

/** A straight piece of a stroke as it stands in a written SVG. */
export interface DrawnStroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** How broad it is to either side of its middle, where that counts: lines that are no bodies are fine. */
  readonly reach: number;
}

/** What of an SVG can lie under a text: strokes, hatched areas, and paper that covers both. */
export interface DrawnThing {
  readonly strokes: readonly DrawnStroke[];
  readonly hatched: PaperBox | null;
  readonly covers: PaperBox | null;
}

const numberPattern = /-?(?:\d+\.?\d*|\.\d+)/g;
const chords = 16;

/** Reads the paths and circles of an SVG, in the order in which they are painted. Reads text and no object of the drawing. */
export function drawnThings(svg: string): DrawnThing[] {
  const body = svg.replace(/<defs[\s\S]*?<\/defs>/g, '');
  return [...body.matchAll(/<(path|circle)\b([^>]*)\/?>/g)].map(([, name, attributes = '']) => {
    const value = (key: string): string | undefined => new RegExp(` ${key}="([^"]*)"`).exec(attributes)?.[1];
    const lines = name === 'path' ? pathLines(value('d') ?? '') : [circleLine(value)];
    const fill = value('fill') ?? 'none';
    const stroke = value('stroke');
    const box = boxOf(lines.flat());
    const seen = stroke !== undefined && !isPaper(stroke);
    return {
      strokes: seen
        ? lines.flatMap((line) => strokesOf(line, reachOf(Number(value('stroke-width') ?? 0))))
        : [],
      hatched: fill.startsWith('url(') ? box : null,
      covers: isPaper(fill) ? box : null,
    };
  });
}

function isPaper(ink: string): boolean {
  return ink === '#fff' || ink.includes('--draw-paper');
}

type Point = readonly [number, number];

function strokesOf(line: readonly Point[], reach: number): DrawnStroke[] {
  return line.slice(1).map(([x2, y2], index) => {
    const [x1, y1] = line[index] ?? [x2, y2];
    return { x1, y1, x2, y2, reach };
  });
}

/** Strokes broader than any line of a drawing are bodies of conductors: a text must not lie on their edges either. */
function reachOf(widthMm: number): number {
  return widthMm > 1.9 ? widthMm / 2 : 0;
}

function boxOf(points: readonly Point[]): PaperBox | null {
  if (points.length === 0) return null;
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    leftMm: Math.min(...xs),
    topMm: Math.min(...ys),
    rightMm: Math.max(...xs),
    bottomMm: Math.max(...ys),
  };
}

function circleLine(value: (key: string) => string | undefined): Point[] {
  const [cx = 0, cy = 0, r = 0] = ['cx', 'cy', 'r'].map((key) => Number(value(key)));
  return Array.from({ length: 4 * chords + 1 }, (_, index): Point => {
    const angle = (index * Math.PI) / (2 * chords);
    return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
  });
}

function pathLines(d: string): Point[][] {
  const lines: Point[][] = [];
  for (const [, command = '', tail = ''] of d.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const numbers = [...tail.matchAll(numberPattern)].map(([digits]) => Number(digits));
    const line = lines.at(-1) ?? [];
    const last = line.at(-1) ?? [0, 0];
    const end: Point = [numbers.at(-2) ?? 0, numbers.at(-1) ?? 0];
    if (command === 'M') lines.push([end]);
    else if (command === 'L') line.push(end);
    else if (command === 'Z') line.push(line[0] ?? last);
    else line.push(...arc(last, numbers, end));
  }
  return lines;
}

/** A circular arc by its centre, after the implementation notes of SVG 1.1, F.6.5, for equal radii. */
function arc(
  [x1, y1]: Point,
  [radius = 0, , , large = 0, sweep = 0]: readonly number[],
  [x2, y2]: Point,
): Point[] {
  const [hx, hy] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const square = Math.max(0, (radius * radius - hx * hx - hy * hy) / (hx * hx + hy * hy || 1));
  const root = (large === sweep ? -1 : 1) * Math.sqrt(square);
  const [cx, cy] = [root * hy + (x1 + x2) / 2, -root * hx + (y1 + y2) / 2];
  const start = Math.atan2(y1 - cy, x1 - cx);
  let turn = Math.atan2(y2 - cy, x2 - cx) - start;
  if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
  if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
  return Array.from({ length: chords }, (_, index): Point => {
    const angle = start + (turn * (index + 1)) / chords;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });
}
