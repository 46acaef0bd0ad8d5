import qrcode from 'qrcode-generator';

/** Modules of the quiet zone on each side (ISO/IEC 18004 asks for four). */
const quiet = 4;

/** A code as SVG markup. */
export interface QrCode {
  readonly drawn: string;
  /** The same code in another place of the page in which it is drawn, which says it aloud once. */
  readonly again: string;
}

/**
 * A QR code (ISO/IEC 18004, error correction M) of an address as SVG markup, one unit a module, dark ones that stand
 * side by side as one bar. Black on white on every screen, so that a camera reads it.
 */
export function qrCode(text: string): QrCode {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  const rows = Array.from({ length: count }, (_, row) => {
    const bars = barsOf(count, (column) => code.isDark(row, column));
    return bars === '' ? '' : `M${quiet} ${row + quiet + 0.5}${bars}`;
  });
  const size = count + 2 * quiet;
  const frame = `viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges"`;
  return {
    drawn: `<svg class="qr-code" role="img" aria-label="Code of this page's address" ${frame}><g id="qr-code"><rect width="${size}" height="${size}" fill="#fff"/><path stroke="#000" d="${rows.join('')}"/></g></svg>`,
    again: `<svg class="qr-code" aria-hidden="true" ${frame}><use href="#qr-code"/></svg>`,
  };
}

/** The dark modules of a row as bars one after another, `m2 0h3`, from where its first module begins. */
function barsOf(count: number, isDark: (column: number) => boolean): string {
  const bars: string[] = [];
  let at = 0;
  for (let column = 0; column < count; column += 1) {
    if (!isDark(column)) continue;
    const from = column;
    while (column + 1 < count && isDark(column + 1)) column += 1;
    bars.push(`${from === at ? '' : `m${from - at} 0`}h${column + 1 - from}`);
    at = column + 1;
  }
  return bars.join('');
}
