import { freePlace } from '../board/place-arrows.ts';
import { drawText, linePitchMm } from '../lettering/lettering.ts';
import { spacing, types } from '../line-styles.ts';
import { at, type PaperBox } from '../paper.ts';
import { type Drawing, openGroup } from '../surface.ts';

/** What is said where a key finds no place. */
export const keyLeft = 'key of letters and numbers';

const type = types.note;

/** How high a key of so many lines is. */
export function keyMm(texts: readonly string[]): number {
  return texts.length * linePitchMm(type) + 2 * spacing.clearMm;
}

/** Writes the lines of a key into a free place of a room, off the board; names it where there is none. */
export function placeKey(
  drawing: Drawing,
  texts: readonly string[],
  room: PaperBox,
  board: PaperBox,
): string[] {
  if (texts.length === 0) return [];
  const width = Math.max(...texts.map((text) => drawing.metrics.widthMm(text, type))) + 2 * spacing.clearMm;
  const size = { width, height: keyMm(texts) };
  const box = freePlace(drawing, room, size, { fromRight: true, keepOff: [board] });
  if (!box) return [keyLeft];
  const group = openGroup(drawing, drawing.svg, 'key');
  texts.forEach((text, index) => {
    const yMm = box.topMm + spacing.clearMm + drawing.metrics.ascentMm(type) + index * linePitchMm(type);
    drawText(drawing, group, text, at(box.leftMm + spacing.clearMm, yMm), { type });
  });
  return [];
}
