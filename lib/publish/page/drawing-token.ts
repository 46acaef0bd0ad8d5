import { sheetIds, sheets } from '../sheets/index.ts';
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
 * Puts the drawings in where their tokens stand; a sheet without drawings keeps nothing. Throws on a drawing for a sheet
 * that does not exist, which would be lost quietly, and on one for builders alone on a sheet that is open to everyone:
 * both are bugs.
 */
export function fillDrawings(
  html: string,
  drawings: readonly PlanDrawing[],
  figures: (drawings: readonly PlanDrawing[]) => string,
): string {
  for (const { id, sheet, openTo } of drawings) {
    const own = sheetIds.find((known) => known === sheet);
    if (!own) throw new Error(`The drawing ${id} belongs on a sheet ${sheet}, which does not exist.`);
    if (sheets[own].openTo === 'everyone' && openTo !== 'everyone')
      throw new Error(`The drawing ${id} is for builders alone, and the sheet ${sheet} is open to everyone.`);
  }
  return html.replace(pattern, (_, sheet: string) => {
    const own = drawings.filter((drawing) => drawing.sheet === sheet);
    return own.length === 0 ? '' : figures(own);
  });
}
