import qrcode from 'qrcode-generator';

/** Modules of the quiet zone on each side (ISO/IEC 18004 asks for four). */
const quiet = 4;

/**
 * A QR code (ISO/IEC 18004, error correction M) of an address as SVG markup, one unit a module. Black on
 * white on every screen, so that a camera reads it.
 */
export function qrCode(text: string): string {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  const dark: string[] = [];
  for (let row = 0; row < count; row += 1)
    for (let column = 0; column < count; column += 1)
      if (code.isDark(row, column)) dark.push(`M${column + quiet} ${row + quiet}h1v1h-1z`);
  const size = count + 2 * quiet;
  return [
    `<svg class="qr-code" role="img" aria-label="Code of this page's address" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges">`,
    `<rect width="${size}" height="${size}" fill="#fff"/><path fill="#000" d="${dark.join('')}"/></svg>`,
  ].join('');
}
