import { type CutOrder, cutOrderOf, type SawCut } from '../../board/cut/cut-order.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import { wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import type { TextLabel } from '../lettering/view-labels.ts';
import { lines, types } from '../line-styles.ts';
import { boxAt, type PaperPoint } from '../paper.ts';
import { drawLine, type Parent } from '../pen.ts';
import { onPaper, type PlanView } from '../sheet/scale.ts';
import { lengthText, type NestScene, nestEntries, offCutLetter } from './nest-list.ts';

/** The order of saw cuts of a stock sheet. */
export function cutOrder({ nesting, sheet }: Pick<NestScene, 'nesting' | 'sheet'>): CutOrder {
  return cutOrderOf(sheet, nesting.rules);
}

/** What each cut is: `3 upright 18 in`, from the left or lower edge of its part to the edge that stays. */
function cutText({ runs, atM, lost }: SawCut, nth: number, style: LengthStyle): string {
  const side = lost === 'before' ? ', blade before it' : '';
  return `${nth + 1} ${runs} ${lengthText('cut', atM, style)}${side}`;
}

/** Wide enough for three or four cuts, and for any sheet. */
const listMm = 165;

const heading =
  'Saw cuts in order, each right through its part; from the left or lower edge of the part to the edge that stays, blade beyond it:';

/** The lines that tell the order of saw cuts, and what they leave together. */
export function cutLines(scene: NestScene, metrics: TextMetrics): string[] {
  const { cuts, together } = cutOrder(scene);
  const told = cuts.map((cut, nth) => cutText(cut, nth, scene.style));
  const left = together.map((members) => {
    const names = members.map((member) => nameOf(scene, member)).toSorted();
    return `No straight cut parts ${[...new Set(names)].join(', ')}: saw along their outlines`;
  });
  const wrapped = (text: string): string[] => wrapText(metrics, text, listMm, types.note);
  return [...(told.length > 0 ? wrapped(heading) : []), ...packed(told, metrics), ...left.flatMap(wrapped)];
}

/** Cuts side by side in lines, none of them broken. */
function packed(texts: readonly string[], metrics: TextMetrics): string[] {
  const rows: string[] = [];
  for (const text of texts) {
    const last = rows.at(-1);
    const longer = last === undefined ? text : `${last}; ${text}`;
    if (last !== undefined && metrics.widthMm(longer, types.note) <= listMm) rows[rows.length - 1] = longer;
    else rows.push(text);
  }
  return rows;
}

/** The number of a piece, or the letter of an off-cut. */
function nameOf(scene: NestScene, member: CutOrder['together'][number][number]): string {
  const offCut = scene.sheet.offCuts.findIndex((one) => Object.is(one, member));
  if (offCut >= 0) return offCutLetter(offCut);
  const piece = scene.sheet.pieces.find((one) => one === member);
  return String(nestEntries(scene).find(({ id }) => id === piece?.id)?.number ?? '');
}

/** Both ends of a cut on paper: at the edges of its part. */
function endsOf({ runs, part, atM }: SawCut, view: PlanView): readonly [PaperPoint, PaperPoint] {
  const { xM, yM, widthM, heightM } = part;
  return runs === 'upright'
    ? [onPaper(view, { xM: xM + atM, yM }), onPaper(view, { xM: xM + atM, yM: yM + heightM })]
    : [onPaper(view, { xM, yM: yM + atM }), onPaper(view, { xM: xM + widthM, yM: yM + atM })];
}

/** Draws the saw cuts, and names each at one of its ends. */
export function drawCuts(parent: Parent, cuts: readonly SawCut[], view: PlanView): TextLabel[] {
  return cuts.map((cut, nth) => {
    const ends = endsOf(cut, view);
    drawLine(parent, ends, lines.rule);
    return {
      id: `cut ${nth + 1}`,
      lines: [`cut ${nth + 1}`],
      type: types.note,
      anchors: ends.map(({ xMm, yMm }) => boxAt(xMm, yMm, 0, 0)),
      own: [`cut ${nth + 1}`],
    };
  });
}
