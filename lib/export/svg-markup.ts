import { roundedText } from '../draw/rounded-text.ts';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text that can stand in markup. */
export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** One element. Numbers are rounded to a thousandth; what is inside is markup already. */
export function element(name: string, attributes: Attributes, inside: readonly string[] = []): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(
      ([key, value]) => ` ${key}="${typeof value === 'number' ? roundedText(value) : escaped(value ?? '')}"`,
    )
    .join('');
  if (inside.length === 0) return `<${name}${written}/>`;
  const [only] = inside;
  const short = inside.length === 1 && only !== undefined && !only.includes('<');
  return short
    ? `<${name}${written}>${only}</${name}>`
    : `<${name}${written}>\n${inside.join('\n')}\n</${name}>`;
}

/** An SVG of a size in millimetres of paper, with a title and a description. */
export function svgOf(
  size: { readonly widthMm: number; readonly heightMm: number },
  words: { readonly title: string; readonly description: string },
  inside: readonly string[],
): string {
  const { widthMm, heightMm } = size;
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${roundedText(widthMm)}mm`,
      height: `${roundedText(heightMm)}mm`,
      viewBox: `0 0 ${roundedText(widthMm)} ${roundedText(heightMm)}`,
      fill: 'none',
    },
    [
      element('title', {}, [escaped(words.title)]),
      element('desc', {}, [escaped(words.description)]),
      ...inside,
    ],
  );
}

/** Path data through points of paper. */
export function pathData(
  points: readonly { readonly xMm: number; readonly yMm: number }[],
  closed = false,
): string {
  const steps = points.map(
    ({ xMm, yMm }, at) => `${at === 0 ? 'M' : 'L'}${roundedText(xMm)} ${roundedText(yMm)}`,
  );
  return steps.join('') + (closed ? 'Z' : '');
}
