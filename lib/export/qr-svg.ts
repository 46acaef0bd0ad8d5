import qrcode from 'qrcode-generator';
import { element, escaped } from './svg-markup.ts';

/** Light border that a reader needs round a code, in modules (ISO/IEC 18004). */
const quietModules = 4;

export interface QrOptions {
  /** Side of the code with its border, millimetres of paper. Default 22: modules of half a millimetre and more. */
  readonly sideMm?: number;
}

/**
 * A QR code of an address as SVG: one path of black modules, black on white in every theme, so that it reads from
 * a screen and from paper. Medium error correction (15 % of it may be smudged). The smallest version that takes
 * the address is chosen; null for an address that is too long for any (over 2,331 bytes).
 */
export function qrSvg(url: string, { sideMm = 22 }: QrOptions = {}): string | null {
  const modules = qrModules(url);
  if (!modules) return null;
  const side = modules.length + 2 * quietModules;
  const d = modules.flatMap((row, y) => runsOf(row, y)).join('');
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${sideMm}mm`,
      height: `${sideMm}mm`,
      viewBox: `0 0 ${side} ${side}`,
      role: 'img',
      'aria-label': `QR code of ${url}`,
      'shape-rendering': 'crispEdges',
    },
    [
      element('title', {}, [escaped(url)]),
      element('rect', { width: side, height: side, fill: '#ffffff' }),
      element('path', { d, fill: '#000000' }),
    ],
  );
}

/** The modules row by row, true where black, without the light border. */
export function qrModules(url: string): boolean[][] | null {
  if (new TextEncoder().encode(url).length > 2331) return null;
  const code = qrcode(0, 'M');
  code.addData(url, 'Byte');
  code.make();
  const count = code.getModuleCount();
  return Array.from({ length: count }, (_, y) => Array.from({ length: count }, (__, x) => code.isDark(y, x)));
}

/** One closed strip for each run of black modules of a row. */
function runsOf(row: readonly boolean[], y: number): string[] {
  const strips: string[] = [];
  for (let x = 0; x < row.length; x += 1) {
    if (row[x] !== true || row[x - 1] === true) continue;
    let end = x;
    while (row[end] === true) end += 1;
    strips.push(`M${x + quietModules} ${y + quietModules}h${end - x}v1h${x - end}z`);
  }
  return strips;
}
