import { DrawnElement, type DrawnWords } from './drawn-node.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import { emMm as emOf, fontFamilies, type TypeStyle, types } from './line-styles.ts';
import { roundNumbers } from './rounded-text.ts';

export interface SerialiseOptions {
  /** `properties` leaves colours to the page, with black as fallback; `resolved` needs no style sheet. */
  readonly colours: 'properties' | 'resolved';
  /** Writes texts as the outlines of their glyphs, so that no font need be installed; left out, as text. */
  readonly outlines?: TextOutlines;
}

/** What writing texts as outlines needs of the type. */
export type TextOutlines = Pick<TextMetrics, 'outline' | 'widthMm'>;

/** Attributes in the order in which they are written; all others follow by name. */
const attributeOrder = ['xmlns', 'id', 'role', 'aria-labelledby', 'width', 'height', 'viewBox', 'class'];
/** Attributes whose value is or holds lengths, angles or coordinates. */
const numeric = new Set(
  'cx cy d fill-opacity font-size height opacity patternTransform points r rx ry stroke-dasharray stroke-width textLength transform viewBox width x x1 x2 y y1 y2'.split(
    ' ',
  ),
);
/** Written by the drawing library for itself. */
const dropped = new Set(['version', 'xmlns:xlink', 'xmlns:svgjs', 'svgjs:data']);
/**
 * Writes a drawing as SVG text: one element a line, attributes in a fixed order, every coordinate rounded to
 * three decimals (a micrometre of paper), so that the same drawing is the same bytes.
 */
export function serialise(root: DrawnElement, options: SerialiseOptions): string {
  const out: string[] = [];
  writeNode(root, options, out);
  return `${out.join('')}\n`;
}

function writeNode(node: DrawnElement | DrawnWords, options: SerialiseOptions, out: string[]): void {
  if (!(node instanceof DrawnElement)) {
    if (node.words.trim() !== '') out.push(escapeText(node.words));
    return;
  }
  const { nodeName: name, childNodes: children } = node;
  if (name === 'text' && options.outlines) {
    out.push(outlinedText(node, options, options.outlines));
    return;
  }
  const open = `<${name}${attributeText(node, options)}`;
  if (children.length === 0) {
    out.push(`${open}/>`);
    return;
  }
  out.push(`${open}>`);
  const holdsText = children.some((child) => !(child instanceof DrawnElement));
  for (const child of children) {
    if (!holdsText) out.push('\n');
    writeNode(child, options, out);
  }
  out.push(holdsText ? `</${name}>` : `\n</${name}>`);
}

/** A text as a path: its glyphs, moved to where the text begins and turned as it was. */
function outlinedText(node: DrawnElement, options: SerialiseOptions, outlines: TextOutlines): string {
  const value = (name: string): string => node.getAttribute(name) ?? '';
  const text = node.textContent;
  const type = typeOf(value('font-family'), Number(value('font-weight')), Number(value('font-size')));
  const anchor = value('text-anchor');
  const share = anchor === 'middle' ? 0.5 : anchor === 'end' ? 1 : 0;
  const xMm = Number(value('x')) - share * outlines.widthMm(text, type);
  const moved = `${value('transform')} translate(${xMm} ${value('y')})`.trim();
  const fill = attributeValue('fill', value('fill'), options);
  const d = roundNumbers(outlines.outline(text, type));
  return `<path d="${d}" fill="${escapeText(fill)}" transform="${roundNumbers(moved)}"/>`;
}

/** The type style behind the attributes of a text. */
function typeOf(family: string, weight: number, emMm: number): TypeStyle {
  const known = Object.values(types).find(
    (type: TypeStyle) =>
      fontFamilies[type.family] === family && type.weight === weight && Math.abs(emOf(type) - emMm) < 0.01,
  );
  if (!known) throw new RangeError(`no type of the drawings is ${weight} ${emMm} ${family}`);
  return known;
}

function attributeText(node: DrawnElement, options: SerialiseOptions): string {
  let text = '';
  for (const name of attributeNames(node)) {
    const value = attributeValue(name, node.getAttribute(name) ?? '', options);
    text += ` ${name}="${escapeText(value)}"`;
  }
  return text;
}

/** The names of an element's attributes in the order in which they are written. */
function attributeNames({ values }: DrawnElement): string[] {
  const others: string[] = [];
  for (const name of values.keys())
    if (!dropped.has(name) && !attributeOrder.includes(name)) others.push(name);
  return [...attributeOrder.filter((name) => values.has(name)), ...others.sort()];
}

function attributeValue(name: string, value: string, options: SerialiseOptions): string {
  if (numeric.has(name)) return roundNumbers(value);
  return options.colours === 'resolved' ? value.replace(/var\(--[\w-]+, ([^)]+)\)/g, '$1') : value;
}

function escapeText(text: string): string {
  if (!/[&<>"]/.test(text)) return text;
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
