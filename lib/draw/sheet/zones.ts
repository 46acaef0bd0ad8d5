import { baselineFor, drawText } from '../lettering/lettering.ts';
import { lines, types } from '../line-styles.ts';
import { at, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawLine, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';

const zoneMm = 50;
const stripMm = 5;
const centringMm = 5;
/** Letters that can't be taken for a figure (ISO 5457 leaves out I and O, mem). */
const letters = 'ABCDEFGH';

/**
 * Zone references and centring marks after ISO 5457 (mem), so that one can say on the telephone where to
 * look: figures along the top, letters down the right side, counted from the top left. Zones of about 50 mm.
 */
export function drawZones(drawing: Drawing, parent: Parent, frame: PaperBox): void {
  const middleX = (frame.leftMm + frame.rightMm) / 2;
  const middleY = (frame.topMm + frame.bottomMm) / 2;
  const tick = (from: PaperPoint, to: PaperPoint): void => drawLine(parent, [from, to], lines.rule);
  for (const [low, high, index] of zonesAlong(frame.leftMm, frame.rightMm)) {
    if (index > 0) tick(at(low, frame.topMm), at(low, frame.topMm - stripMm));
    drawZone(drawing, parent, String(index + 1), at((low + high) / 2, frame.topMm - stripMm / 2));
  }
  for (const [low, high, index] of zonesAlong(frame.topMm, frame.bottomMm)) {
    if (index > 0) tick(at(frame.rightMm, low), at(frame.rightMm + stripMm, low));
    drawZone(drawing, parent, letters[index] ?? '', at(frame.rightMm + stripMm / 2, (low + high) / 2));
  }
  const centrings: readonly (readonly [PaperPoint, PaperPoint])[] = [
    [at(middleX, frame.bottomMm), at(middleX, frame.bottomMm + centringMm)],
    [at(frame.leftMm, middleY), at(frame.leftMm - centringMm, middleY)],
  ];
  for (const pair of centrings) drawLine(parent, pair, lines.frame);
}

/** The zone of a frame in which a point lies, letter first: `B4`. */
export function zoneAt(frame: PaperBox, { xMm, yMm }: PaperPoint): string {
  const indexOf = (zones: ReturnType<typeof zonesAlong>, mm: number): number =>
    zones.find(([, high]) => mm < high)?.[2] ?? zones.length - 1;
  const column = indexOf(zonesAlong(frame.leftMm, frame.rightMm), xMm);
  const row = indexOf(zonesAlong(frame.topMm, frame.bottomMm), yMm);
  return `${letters[row] ?? ''}${column + 1}`;
}

/** An even number of zones as near to 50 mm as may be: from, to, index. */
function zonesAlong(fromMm: number, toMm: number): (readonly [number, number, number])[] {
  const count = Math.max(2, 2 * Math.round((toMm - fromMm) / zoneMm / 2));
  const each = (toMm - fromMm) / count;
  return Array.from({ length: count }, (_, index) => [
    fromMm + index * each,
    fromMm + (index + 1) * each,
    index,
  ]);
}

function drawZone(drawing: Drawing, parent: Parent, name: string, middle: PaperPoint): void {
  const point = at(middle.xMm, baselineFor(middle.yMm, types.note));
  drawText(drawing, parent, name, point, { type: types.note, align: 'middle', ink: 'quiet' });
}
