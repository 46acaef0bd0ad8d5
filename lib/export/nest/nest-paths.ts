import type { NestedSheet } from '../../board/cut/nesting.ts';
import { laidPoint, type SheetPiece } from '../../board/cut/sheet-pieces.ts';
import type { MachinePaths } from '../machine/machine-paths.ts';
import { strokeLetters } from '../machine/stroke-letters.ts';

const letterHeightM = 0.01;

/**
 * What a machine does to a stock sheet: every piece where it lies, its holes with it, and its name marked on it.
 * Origin at the lower left corner of the sheet, its longer side lying.
 */
export function nestPaths(sheet: NestedSheet, pieces: readonly SheetPiece[]): MachinePaths {
  const laid = sheet.pieces.flatMap((piece) => {
    const known = pieces.find(({ id }) => id === piece.id);
    return known ? [{ piece, known }] : [];
  });
  return {
    cut: laid.flatMap(({ piece, known }) =>
      known.loops.map((loop) => loop.map((point) => laidPoint(piece, known.corner, point))),
    ),
    drill: laid.flatMap(({ piece, known }) =>
      known.holes.map((hole) => laidPoint(piece, known.corner, hole)),
    ),
    engrave: laid.flatMap(({ piece }) => nameIn(piece)),
  };
}

/** The id of a piece in its middle, as large as it has room for. */
function nameIn({ id, xM, yM, widthM, heightM }: NestedSheet['pieces'][number]): MachinePaths['engrave'] {
  const tall = Math.min(letterHeightM, heightM / 3);
  const lying = strokeLetters(id, { xM: 0, yM: 0 }, tall);
  const shrink = Math.min(1, (0.8 * widthM) / Math.max(lying.widthM, 1e-6));
  const corner = {
    xM: xM + (widthM - lying.widthM * shrink) / 2,
    yM: yM + (heightM - tall * shrink) / 2,
  };
  return strokeLetters(id, corner, tall * shrink).strokes;
}
