import type { DrawnPage } from '../../lib/draw/page.ts';
import { boxesMeet, boxHolds, grown, type PaperBox } from '../../lib/draw/paper.ts';
import { drawingText } from '../../lib/draw/surface.ts';
import { type DrawnStroke, type DrawnThing, drawnThings } from './drawn-svg.ts';

/** Boxes of texts hold the tallest and deepest letter: so much of them is empty at the rim. */
const rimMm = 0.12;

/** Every pair of texts that share area, every text that a stroke or a hatch runs through, all texts off the sheet. */
export function overlapsOn({ drawing }: Pick<DrawnPage, 'drawing'>): string[] {
  const { texts, widthMm, heightMm } = drawing;
  const things = drawnThings(drawingText(drawing, { colours: 'resolved' }));
  const sheet: PaperBox = { leftMm: 4, topMm: 4, rightMm: widthMm - 4, bottomMm: heightMm - 4 };
  const pairs = texts.flatMap((a, nth) =>
    texts
      .slice(nth + 1)
      .flatMap((b) => (boxesMeet(a.box, b.box) ? [`text "${a.text}" on text "${b.text}"`] : [])),
  );
  const crossed = texts.flatMap(({ text, box }) =>
    isCrossed(things, grown(box, -rimMm)) ? [`a line through text "${text}"`] : [],
  );
  const off = texts.flatMap(({ text, box }) =>
    boxHolds(sheet, box) ? [] : [`text "${text}" off the sheet`],
  );
  return [...pairs, ...crossed, ...off];
}

/** True where a stroke or hatch meets a box and no paper that is laid later covers it there. */
function isCrossed(things: readonly DrawnThing[], box: PaperBox): boolean {
  return things.some(({ strokes, hatched }, nth) => {
    const meets =
      (hatched !== null && boxesMeet(hatched, box)) || strokes.some((stroke) => strokeMeets(stroke, box));
    return meets && !things.slice(nth + 1).some(({ covers }) => covers !== null && boxHolds(covers, box));
  });
}

/** Cuts a stroke into short pieces, from edge to edge where it is broad, and looks for one whose middle lies in the box. */
function strokeMeets({ x1, y1, x2, y2, reach }: DrawnStroke, box: PaperBox): boolean {
  if (Math.max(x1, x2) + reach < box.leftMm || Math.min(x1, x2) - reach > box.rightMm) return false;
  if (Math.max(y1, y2) + reach < box.topMm || Math.min(y1, y2) - reach > box.bottomMm) return false;
  const long = Math.hypot(x2 - x1, y2 - y1);
  const pieces = Math.max(1, Math.ceil(long / 0.1));
  const lanes = Math.ceil(reach / 0.2);
  for (let piece = 0; piece <= pieces; piece += 1)
    for (let lane = -lanes; lane <= lanes; lane += 1) {
      const aside = lanes === 0 || long === 0 ? 0 : (lane * reach) / lanes / long;
      const x = x1 + ((x2 - x1) * piece) / pieces + (y2 - y1) * aside;
      const y = y1 + ((y2 - y1) * piece) / pieces - (x2 - x1) * aside;
      if (x > box.leftMm && x < box.rightMm && y > box.topMm && y < box.bottomMm) return true;
    }
  return false;
}
