import { freePlace } from '../board/place-arrows.ts';
import { drawLines } from '../lettering/lettering.ts';
import { linesSizeMm, type TextLabel } from '../lettering/view-labels.ts';
import { types } from '../line-styles.ts';
import { at, centreOf, type PaperBox } from '../paper.ts';
import { frameRound } from '../sheet/sheet-format.ts';
import { zoneAt } from '../sheet/zones.ts';
import { type Drawing, openGroup } from '../surface.ts';

const heading = 'No room beside them, by zone:';
const padMm = 2;

/**
 * Lists tags and names that found no room beside what they name, each with its zone and its part, wherever the sheet is
 * free; hands back what has no room there either.
 */
export function listTags(
  drawing: Drawing,
  room: PaperBox,
  labels: readonly TextLabel[],
  nameOf: (item: string) => string,
): string[] {
  if (labels.length === 0) return [];
  const frame = frameRound(drawing.widthMm, drawing.heightMm);
  const rows = labels.map(({ lines, anchors: [anchor], subject }) => {
    const zone = anchor ? `${zoneAt(frame, centreOf(anchor))} ` : '';
    const [first = '', ...more] = lines;
    const name = nameOf(subject ?? '');
    return more.length === 0 ? `${zone}${first}` : `${zone}${name}, ${[first, ...more].join(': ')}`;
  });
  const texts = [heading, ...rows.toSorted()];
  const { widthMm, heightMm } = linesSizeMm(drawing, texts, types.terminal);
  const box = freePlace(drawing, room, { width: widthMm + 2 * padMm, height: heightMm + 2 * padMm });
  if (!box) return rows;
  const first = at(box.leftMm + padMm, box.topMm + padMm + drawing.metrics.ascentMm(types.terminal));
  drawLines(drawing, openGroup(drawing, drawing.svg, 'tags'), texts, first, { type: types.terminal });
  return [];
}
