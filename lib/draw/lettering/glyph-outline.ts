import type * as fontkit from 'fontkit';
import { roundedText } from '../rounded-text.ts';

const letters = {
  moveTo: 'M',
  lineTo: 'L',
  quadraticCurveTo: 'Q',
  bezierCurveTo: 'C',
  closePath: 'Z',
} as const satisfies Record<fontkit.PathCommand['command'], string>;

/** The glyphs of a line of text as path data: em in millimetres, the baseline beginning at the origin, y down. */
export function glyphOutline(font: fontkit.Font, text: string, emMm: number): string {
  const scale = emMm / font.unitsPerEm;
  const { glyphs, positions } = font.layout(text);
  let pen = 0;
  return glyphs
    .map((glyph, index) => {
      const { xAdvance = 0, xOffset = 0, yOffset = 0 } = positions[index] ?? {};
      const at = { x: pen + xOffset, y: yOffset };
      pen += xAdvance;
      return glyph.path.commands.map((command) => commandText(command, at, scale)).join('');
    })
    .join('');
}

/** Arguments are pairs of x and y, in units of the font, y up. */
function commandText(
  { command, args }: fontkit.PathCommand,
  at: { readonly x: number; readonly y: number },
  scale: number,
): string {
  const numbers = args.map((value, index) =>
    roundedText(index % 2 === 0 ? (value + at.x) * scale : -(value + at.y) * scale),
  );
  return letters[command] + numbers.join(' ');
}
