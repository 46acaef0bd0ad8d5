import { sheetIds } from '../sheets/index.ts';
import type { PlanDrawing } from '../site/shop-site.ts';

const pattern = /<!--drawings:([a-z-]+)-->/g;

/** Stands in a rendered page where the drawings of a sheet go. Texts are escaped, so none can look like it. */
export function drawingToken(sheet: string): string {
  return `<!--drawings:${sheet}-->`;
}

/** True where a page waits for drawings. */
export function hasDrawingTokens(html: string): boolean {
  return html.includes('<!--drawings:');
}

/**
 * Puts the drawings in where their tokens stand; a sheet without drawings keeps nothing. Throws on a drawing
 * for a sheet that does not exist: that is a bug, and a drawing must not be lost quietly.
 */
export function fillDrawings(
  html: string,
  drawings: readonly PlanDrawing[],
  figures: (drawings: readonly PlanDrawing[]) => string,
): string {
  const known: readonly string[] = sheetIds;
  const lost = drawings.find((drawing) => !known.includes(drawing.sheet));
  if (lost) throw new Error(`The drawing ${lost.id} belongs on a sheet ${lost.sheet}, which does not exist.`);
  return html.replace(pattern, (_, sheet: string) => {
    const own = drawings.filter((drawing) => drawing.sheet === sheet);
    return own.length === 0 ? '' : figures(own);
  });
}
