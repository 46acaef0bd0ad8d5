import { createHash } from 'node:crypto';
import { parseHTML } from 'linkedom';
import type { JobDrawing } from '../../lib/draw/draw-job.ts';
import { drawnThings } from './drawn-svg.ts';

/**
 * Drawings in words, to be read as a diff: the sheets, and for each thing of the plan on them how many marks it has,
 * where they lie on the paper and what is written there. A digest of its SVG holds each sheet to a micrometre.
 */
export function drawingSummary(drawings: readonly JobDrawing[]): string {
  return drawings.map((drawing) => `${sheetLines(drawing).join('\n')}\n`).join('\n');
}

/** An element of a written drawing. */
interface Marks {
  readonly id: string;
  readonly tagName: string;
  readonly outerHTML: string;
  readonly textContent: string | null;
  getAttribute(name: string): string | null;
  querySelectorAll(selector: string): Iterable<Marks>;
  remove(): void;
}

function sheetLines({ id, title, scale, widthMm, heightMm, unplaced, svg }: JobDrawing): string[] {
  const { document } = parseHTML(svg);
  const children: Iterable<Marks> = document.querySelector('svg')?.children ?? [];
  const groups = [...children].filter(({ tagName }) => isGroup(tagName));
  return [
    `${id}: ${title}, ${scale ?? 'no scale'}, ${widthMm} by ${heightMm} mm, digest ${digestOf(svg)}`,
    ...unplaced.map((what) => `  without a place: ${what}`),
    ...groups.flatMap((group) => groupLines(group.id.split('__').at(-1) ?? '', group)),
  ];
}

function isGroup(tagName: string): boolean {
  return tagName.toLowerCase() === 'g';
}

/** A line for a group of the sheet without the things of the plan in it, then one for each of those. */
function groupLines(name: string, group: Marks): string[] {
  const things = new Map<string, Marks[]>();
  for (const thing of group.querySelectorAll('[data-of]')) {
    const subject = thing.getAttribute('data-of') ?? '';
    things.set(subject, [...(things.get(subject) ?? []), thing]);
  }
  const inside = [...things].map(([subject, elements]) => `    ${subject}: ${marksOf(elements)}`);
  for (const thing of group.querySelectorAll('[data-of]')) thing.remove();
  return [`  ${name === '' ? 'no name' : name}: ${marksOf([group])}`, ...inside];
}

function digestOf(svg: string): string {
  return createHash('sha256').update(svg).digest('hex').slice(0, 16);
}

/** `3 paths from 40.2, 55.1 to 70, 80.3 | 60 A | P1`: strokes and hatches, their extent in mm of paper, what is written. */
function marksOf(elements: readonly Marks[]): string {
  const found = (kind: string): Marks[] => elements.flatMap((one) => [...one.querySelectorAll(kind)]);
  const counts = ['path', 'circle'].flatMap((kind) => {
    const count = found(kind).length;
    return count === 0 ? [] : [`${count} ${kind}${count === 1 ? '' : 's'}`];
  });
  const marks = `${counts.join(', ') || 'no marks'}${extentOf(elements)}`;
  return [marks, ...found('text').map(({ textContent }) => textContent?.trim() ?? '')].join(' | ');
}

function extentOf(elements: readonly Marks[]): string {
  const strokes = elements.flatMap(({ outerHTML }) =>
    drawnThings(outerHTML).flatMap((thing) => thing.strokes),
  );
  if (strokes.length === 0) return '';
  const xs = strokes.flatMap(({ x1, x2 }) => [x1, x2]);
  const ys = strokes.flatMap(({ y1, y2 }) => [y1, y2]);
  const corner = (x: number, y: number): string => [x, y].map((mm) => Number(mm.toFixed(1)) + 0).join(', ');
  return ` from ${corner(Math.min(...xs), Math.min(...ys))} to ${corner(Math.max(...xs), Math.max(...ys))}`;
}
