import { type Dom, type G, registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import { type DrawnElement, drawnDocument, drawnWindow } from './drawn-node.ts';
import type { Obstacle } from './lettering/obstacle-index.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import { inks } from './line-styles.ts';
import type { PaperBox } from './paper.ts';
import { type SerialiseOptions, serialise } from './serialise.ts';

export interface DrawingRequest {
  /** Job and sheet: every id in the drawing begins with them. */
  readonly job: string;
  readonly sheet: string;
  /** Size on paper. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Read out by a screen reader: what it is, then what it shows. */
  readonly title: string;
  readonly description: string;
  readonly metrics: TextMetrics;
}

/** A text as it was drawn, with the room that it takes: what overlap is measured by. */
export interface DrawnText {
  readonly text: string;
  readonly box: PaperBox;
}

/** A drawing in the making. */
export interface Drawing {
  readonly svg: Svg;
  /** The element of `svg`. */
  readonly root: DrawnElement;
  readonly metrics: TextMetrics;
  readonly widthMm: number;
  readonly heightMm: number;
  /** The id of a named thing, prefixed with job and sheet. */
  readonly id: (name: string) => string;
  /** Every text drawn so far. */
  readonly texts: DrawnText[];
  /** Ids of the patterns that are defined so far. */
  readonly patterns: Set<string>;
  /** The element that patterns are defined in. */
  readonly defs: Dom;
  /** Strokes of the elements that were read as obstacles so far: what is drawn stays as it is. */
  readonly strokes: WeakMap<DrawnElement, readonly Obstacle[]>;
}

/** Opens an empty drawing: a fresh SVG in millimetres of paper, named and described for a screen reader. */
export function openDrawing(request: DrawingRequest): Drawing {
  registerWindow(drawnWindow, drawnDocument);
  const svg = SVG();
  const id = (name: string): string => drawingId(request.job, request.sheet, name);
  svg.attr({
    id: id('drawing'),
    role: 'img',
    'aria-labelledby': `${id('title')} ${id('description')}`,
    width: `${request.widthMm}mm`,
    height: `${request.heightMm}mm`,
    viewBox: `0 0 ${request.widthMm} ${request.heightMm}`,
    fill: 'none',
    'stroke-linejoin': 'round',
  });
  svg
    .element('title')
    .attr({ id: id('title') })
    .words(request.title);
  svg
    .element('desc')
    .attr({ id: id('description') })
    .words(request.description);
  const defs = svg.element('defs').attr({ id: id('patterns') });
  const { metrics, widthMm, heightMm } = request;
  const root: DrawnElement = svg.node;
  const size = { widthMm, heightMm };
  return { svg, root, metrics, ...size, id, texts: [], patterns: new Set(), defs, strokes: new WeakMap() };
}

/** Fills the whole sheet with paper, so that a file opened on a dark ground stays readable. */
export function layPaper(drawing: Drawing): void {
  drawing.svg.rect(drawing.widthMm, drawing.heightMm).attr({ x: 0, y: 0, fill: inks.paper });
}

/**
 * An id that is unique where job, sheet and name are: letters, digits, `.` and `-` stay, all else is
 * written as its code point between underscores, so that no two names meet.
 */
export function drawingId(...names: readonly string[]): string {
  return names
    .map((name) =>
      name.replace(/[^A-Za-z0-9.-]/gu, (character) => `_${(character.codePointAt(0) ?? 0).toString(16)}_`),
    )
    .join('__');
}

/** A group of strokes, with an id of its own where it has a name. */
export function openGroup(drawing: Drawing, parent: Svg | G = drawing.svg, name?: string): G {
  const group = parent.group();
  if (name !== undefined) group.attr({ id: drawing.id(name) });
  return group;
}

/** Keeps the next place in a group: what is drawn into it later stands there, before all that is drawn in between. */
export function keepPlace(parent: Svg | G): (draw: () => void) => void {
  const element: DrawnElement = parent.node;
  const place = element.childNodes.length;
  return (draw) => {
    const first = element.childNodes.length;
    draw();
    element.childNodes.splice(place, 0, ...element.childNodes.splice(first));
  };
}

/**
 * A group that stands for a thing of the plan (a wire, a fuse, a part), by its plan id, so that a page can
 * light up the same thing in every drawing and table.
 */
export function openSubject(drawing: Drawing, parent: Svg | G, subject: string): G {
  return openGroup(drawing, parent).attr({ 'data-of': subject });
}

/** The finished drawing as SVG text: the same drawing gives the same bytes. */
export function drawingText(drawing: Drawing, options: SerialiseOptions): string {
  return serialise(drawing.root, options);
}
