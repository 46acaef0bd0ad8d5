import { type LetteredHoles, letteredHoles } from '../../board/cut/hole-letters.ts';
import type { PlanHole } from '../../model/plan/index.ts';
import { printedBit } from '../../model/printed/holes.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import { freePlace } from '../board/place-arrows.ts';
import { drawText, linePitchMm } from '../lettering/lettering.ts';
import { at, type PaperBox } from '../paper.ts';
import { spacing, types } from '../style.ts';
import { type Drawing, openGroup } from '../surface.ts';

/** What is said where the key of hole letters finds no place. */
export const holeKeyLeft = 'key of hole letters';

const type = types.note;

/** Letter and number of every hole, by its number: `A24`. */
export function holeNames(holes: readonly PlanHole[]): ReadonlyMap<number, string> {
  return new Map(
    letteredHoles(holes).flatMap(({ letter, holes: own }) =>
      own.map(({ n }) => [n, `${letter}${n}`] as const),
    ),
  );
}

/** What each letter means: `A: bit 17/64 in or 6.6 mm, through, 9 holes`. */
export function holeKeyTexts(holes: readonly PlanHole[], style: LengthStyle): string[] {
  return letteredHoles(holes).map(({ letter, setUp, holes: own }: LetteredHoles<PlanHole>) => {
    const { diameterM, depthM, pilotFor } = setUp;
    const bit = printedBit(diameterM, pilotFor === null ? 'clearance' : 'pilot', style.system);
    const reach = depthM === null ? 'through' : `${printedDimension('depth-drilled', depthM, style)} deep`;
    return `${letter}: bit ${bit}, ${reach}, ${own.length} ${own.length === 1 ? 'hole' : 'holes'}`;
  });
}

/** How high the key is. */
export function holeKeyMm(texts: readonly string[]): number {
  return texts.length * linePitchMm(type) + 2 * spacing.clearMm;
}

/** Writes the key into a free place of a room, off the board; names it where there is none. */
export function placeHoleKey(
  drawing: Drawing,
  texts: readonly string[],
  room: PaperBox,
  board: PaperBox,
): string[] {
  if (texts.length === 0) return [];
  const width = Math.max(...texts.map((text) => drawing.metrics.widthMm(text, type))) + 2 * spacing.clearMm;
  const box = freePlace(
    drawing,
    room,
    { width, height: holeKeyMm(texts) },
    { fromRight: true, keepOff: [board] },
  );
  if (!box) return [holeKeyLeft];
  const group = openGroup(drawing, drawing.svg, 'hole-key');
  texts.forEach((text, index) => {
    const yMm = box.topMm + spacing.clearMm + drawing.metrics.ascentMm(type) + index * linePitchMm(type);
    drawText(drawing, group, text, at(box.leftMm + spacing.clearMm, yMm), { type });
  });
  return [];
}
