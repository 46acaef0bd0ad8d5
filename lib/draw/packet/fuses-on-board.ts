import type { Point } from '../../board/shape/point.ts';
import type { BuildPlan, PlanBoard, PlanItem, PlanPlacement } from '../../model/plan/index.ts';
import { anchorAt } from '../lettering/label-candidates.ts';
import { wrapText } from '../lettering/lettering.ts';
import type { Obstacle } from '../lettering/obstacle-index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels, drawLinesIn, linesSizeMm, type TextLabel } from '../lettering/view-labels.ts';
import { lines, types } from '../line-styles.ts';
import {
  at,
  boxAt,
  boxRound,
  centreOf,
  heightMm,
  type PaperBox,
  type PaperPoint,
  widthMm,
} from '../paper.ts';
import { drawShape } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { wholeBoard } from '../whole-board.ts';
import { fusesText, type NumberedFuse } from './numbered-fuses.ts';
import { openPacketDrawing, type PacketDrawing, packetWidthMm } from './packet-drawing.ts';

const rimMm = 5;
/** Room for names beside the board, and above and below it. */
const besideMm = 13;
const aboveMm = 19;
/** A board is drawn no higher than this: with its names it stands on one page beside its text. */
const mostMm = 110;
/** No chord stands farther from its arc, metres. */
const chordM = 0.0005;
const namesMm = 34;

/** The board from its face with the parts that hold fuses named, the others pale. Null where it holds none. */
export function fusesOnBoard(
  plan: BuildPlan,
  metrics: TextMetrics,
  fuses: readonly NumberedFuse[],
  board: PlanBoard,
): PacketDrawing | null {
  const own = fuses.filter(({ holder }) => holder.board === board.id);
  if (own.length === 0) return null;
  const room = { widthMm: packetWidthMm - 2 * besideMm, heightMm: mostMm };
  const whole = wholeBoard(board, room, chordM);
  const onPaper = whole.onPaper(at((packetWidthMm - whole.widthMm) / 2, aboveMm));
  const [id, title] = [`board-${board.id}`, `${board.title}: where its fuses are`];
  const holders = holdersOf(board, own);
  const description = `${board.title} from its face. ${holders.map(({ said }) => said.join(': ')).join('. ')}.`;
  const high = Math.ceil(whole.heightMm + 2 * aboveMm);
  const drawing = openPacketDrawing(plan, metrics, { id, title, description, heightMm: high });
  drawShape(openSubject(drawing, drawing.svg, board.id), whole.ring.map(onPaper), lines.seen);
  const bodies = board.placements.map((placement) => ({ placement, box: bodyBox(placement, onPaper) }));
  const held = new Set(holders.map(({ item }) => item));
  for (const { placement, box } of bodies) {
    const item = plan.items.find(({ id: own }) => own === placement.item);
    drawBody(drawing, placement.item, box, held.has(placement.item));
    if (item && !held.has(item.id)) nameWithin(drawing, item, box);
  }
  const unplaced = nameHolders(drawing, holders, bodies);
  return { id, title, drawing, unplaced };
}

interface Holder {
  readonly item: string;
  readonly said: readonly [name: string, fuses: string];
}

function holdersOf(board: PlanBoard, fuses: readonly NumberedFuse[]): Holder[] {
  return board.placements.flatMap(({ item }): Holder[] => {
    const own = fuses.filter(({ holder }) => holder.id === item);
    const [first] = own;
    return first
      ? [{ item, said: [shortName(first.holder), fusesText(own.map(({ number }) => number))] }]
      : [];
  });
}

interface Body {
  readonly placement: PlanPlacement;
  readonly box: PaperBox;
}

function bodyBox({ xM, yM, widthM, depthM }: PlanPlacement, onPaper: (point: Point) => PaperPoint): PaperBox {
  return boxRound([onPaper({ xM, yM }), onPaper({ xM: xM + widthM, yM: yM + depthM })]);
}

function drawBody(drawing: Drawing, item: string, box: PaperBox, holdsFuse: boolean): void {
  const corners = [
    at(box.leftMm, box.topMm),
    at(box.rightMm, box.topMm),
    at(box.rightMm, box.bottomMm),
    at(box.leftMm, box.bottomMm),
  ];
  drawShape(
    openSubject(drawing, drawing.svg, item),
    corners,
    holdsFuse ? lines.cut : lines.paleItem,
    'paper',
  );
}

/** Writes the name of a part in its outline, where it has room there: it helps to find one's way. */
function nameWithin(drawing: Drawing, item: PlanItem, box: PaperBox): void {
  const type = types.note;
  const texts = wrapText(drawing.metrics, shortName(item), widthMm(box) - 2, type);
  const size = linesSizeMm(drawing, texts, type);
  if (size.widthMm > widthMm(box) - 1.6 || size.heightMm > heightMm(box) - 1.6) return;
  const { xMm, yMm } = centreOf(box);
  const own = boxAt(xMm - size.widthMm / 2, yMm - size.heightMm / 2, size.widthMm, size.heightMm);
  drawLinesIn(drawing, openSubject(drawing, drawing.svg, item.id), { lines: texts, type }, own, false);
}

/** Writes the name and the fuses of each holder beside it or at the end of a leader; names those without room. */
function nameHolders(
  drawing: Drawing,
  holders: readonly Holder[],
  bodies: readonly Body[],
): readonly string[] {
  const labels = holders.flatMap(({ item, said: [name, fuses] }): TextLabel[] => {
    const body = bodies.find(({ placement }) => placement.item === item);
    if (!body) return [];
    const texts = [...wrapText(drawing.metrics, name, namesMm, types.terminal), fuses];
    const anchors = [body.box, anchorAt(centreOf(body.box))];
    return [
      { id: item, lines: texts, type: types.terminal, subject: item, anchors, own: [item], asideMm: 1 },
    ];
  });
  const obstacles = bodies.map(({ placement, box }): Obstacle => ({ id: placement.item, box }));
  const room = boxAt(rimMm, rimMm, packetWidthMm - 2 * rimMm, drawing.heightMm - 2 * rimMm);
  return drawLabels(drawing, drawing.svg, labels, room, obstacles);
}
