import type { Side } from '../../board/layout/item.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { drawLines, drawText, linePitchMm } from '../lettering/lettering.ts';
import { spreadApart } from '../lettering/spread.ts';
import { lines, spacing, type TypeStyle, types } from '../line-styles.ts';
import { at, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawArrowHead, drawLine, type Parent } from '../pen.ts';
import type { ScaleRatio } from '../sheet/scale.ts';
import { type Drawing, openSubject } from '../surface.ts';
import type { Margins } from './scaled-sheet.ts';

/** Where something leaves a board or comes to it. */
export interface Exit {
  readonly subject: string;
  readonly side: Side;
  readonly point: PaperPoint;
  /** Its lines, one below the other, parted by line breaks. */
  readonly text: string;
}

const arrowMm = 4;
const jogMm = 3;
const pastMm = 6;

/** How exits of one side are lettered: turned across the edge, or level with it where they have the room. */
interface ExitSide {
  readonly turned: boolean;
  readonly places: readonly number[];
}

type Metrics = Pick<Drawing, 'metrics'>;

/** How far exits with these texts reach beyond a side of the board that is so long. */
function exitDepthMm(
  drawing: Metrics,
  side: Side,
  texts: readonly string[],
  lengthMm: number,
  type: TypeStyle,
): number {
  if (texts.length === 0) return 0;
  const own = inBlocks(drawing, texts, lengthMm, type) ? texts : texts.map(onOneLine);
  const wide = Math.max(...own.map((text) => wideMm(drawing, text, type)));
  const high = Math.max(...own.map((text) => highMm(drawing, text, type)));
  const level = isUpright(side) || (texts.length - 1) * (wide + 2) <= lengthMm;
  return arrowMm + jogMm + 2 * spacing.clearMm + (isUpright(side) || !level ? wide : high);
}

function linesIn(text: string): string[] {
  return text.split('\n');
}

function wideMm({ metrics }: Metrics, text: string, type: TypeStyle): number {
  return Math.max(...linesIn(text).map((line) => metrics.widthMm(line, type)));
}

function highMm({ metrics }: Metrics, text: string, type: TypeStyle): number {
  return metrics.ascentMm(type) + metrics.descentMm(type) + (linesIn(text).length - 1) * linePitchMm(type);
}

/** The room that a text takes along its side, with what parts it from the next. */
function pitchMm(drawing: Metrics, texts: readonly string[], type: TypeStyle): number {
  const isBlock = texts.some((text) => linesIn(text).length > 1);
  return Math.max(...texts.map((text) => highMm(drawing, text, type))) + (isBlock ? 1.4 : 0.3);
}

/** True where texts of several lines have room one beside the other along a side; else each stands on one line. */
function inBlocks(drawing: Metrics, texts: readonly string[], lengthMm: number, type: TypeStyle): boolean {
  return (texts.length - 1) * pitchMm(drawing, texts, type) <= lengthMm + 2 * pastMm;
}

function onOneLine(text: string): string {
  return linesIn(text).join(' ');
}

/** A text at an edge of a board, before it has a place on paper. */
export interface ExitText {
  readonly edge: Side;
  readonly xM: number;
  readonly yM: number;
  readonly text: string;
}

/** Room that exits take round a board at a scale, and that its surroundings take where nothing leaves. */
export function exitMargins(
  drawing: Metrics,
  board: PlanBoard,
  exits: readonly ExitText[],
  ratio: ScaleRatio,
  type: TypeStyle,
  leastMm: number = surroundingsMm,
): Margins {
  const depth = (side: Side): number => {
    const texts = exits.filter(({ edge }) => edge === side).map(({ text }) => text);
    const lengthM = isUpright(side) ? board.heightM : board.widthM;
    return Math.max(leastMm, exitDepthMm(drawing, side, texts, (lengthM * 1000) / ratio, type));
  };
  return { left: depth('left'), right: depth('right'), top: depth('top'), bottom: depth('bottom') };
}

/** Room for the surroundings of a board on a side where nothing leaves. */
const surroundingsMm = 8;

/** The side of a board that an edge is, by its word in the plan; null for any other word. */
export function sideOf(edge: string): Side | null {
  return edge === 'left' || edge === 'right' || edge === 'top' || edge === 'bottom' ? edge : null;
}

const isUpright = (side: Side): boolean => side === 'left' || side === 'right';

/** Draws arrows where things leave the board, each with its text beyond it. Names those of a side that has no room. */
export function drawExits(
  drawing: Drawing,
  parent: Parent,
  exits: readonly Exit[],
  box: PaperBox,
  type: TypeStyle,
): string[] {
  const sides: readonly Side[] = ['left', 'right', 'top', 'bottom'];
  const isBesideTexts = exits.some(({ side }) => isUpright(side));
  return sides.flatMap((side) => {
    const along = ({ point }: Exit): number => (isUpright(side) ? point.yMm : point.xMm);
    const all = exits.filter((exit) => exit.side === side).toSorted((a, b) => along(a) - along(b));
    if (all.length === 0) return [];
    const lengthMm = isUpright(side) ? box.bottomMm - box.topMm : box.rightMm - box.leftMm;
    const asBlocks = inBlocks(
      drawing,
      all.map(({ text }) => text),
      lengthMm,
      type,
    );
    const own = asBlocks ? all : all.map((exit) => ({ ...exit, text: onOneLine(exit.text) }));
    // Where they are too many for their size, they are written as small as may be.
    for (const tried of type === types.terminal ? [type] : [type, types.terminal]) {
      const laid = laySide(drawing, { side, exits: own, alongs: own.map(along), isBesideTexts }, box, tried);
      if (laid === null) continue;
      own.forEach((exit, index) => {
        const group = openSubject(drawing, parent, exit.subject);
        const textMm = laid.places[index] ?? along(exit);
        drawExit(drawing, group, exit, box, { textMm, turned: laid.turned, type: tried });
      });
      return [];
    }
    return own.map(({ text }) => text);
  });
}

/** Exits of one side, with where each is along it, and whether texts stand at the sides beside a level one. */
interface SideExits {
  readonly side: Side;
  readonly exits: readonly Exit[];
  readonly alongs: readonly number[];
  readonly isBesideTexts: boolean;
}

function laySide(
  drawing: Metrics,
  { side, exits, alongs, isBesideTexts }: SideExits,
  box: PaperBox,
  type: TypeStyle,
): ExitSide | null {
  const pitch = pitchMm(
    drawing,
    exits.map(({ text }) => text),
    type,
  );
  const [low, high] = isUpright(side) ? [box.topMm, box.bottomMm] : [box.leftMm, box.rightMm];
  const wide = Math.max(...exits.map(({ text }) => wideMm(drawing, text, type))) + 2;
  // How far texts may reach past the corners of the board: not to those of the sides beside it.
  const reachesMm = isUpright(side) ? [] : [0, arrowMm + jogMm, ...(isBesideTexts ? [] : [wide / 2])];
  for (const reachMm of reachesMm) {
    const inMm = wide / 2 - reachMm;
    const places = spreadApart(alongs, wide, low + inMm, high - inMm);
    if (places !== null) return { turned: false, places };
  }
  const places = spreadApart(alongs, pitch, low - pastMm, high + pastMm);
  return places === null ? null : { turned: !isUpright(side), places };
}

interface ExitLettering {
  readonly textMm: number;
  readonly turned: boolean;
  readonly type: TypeStyle;
}

function drawExit(
  drawing: Drawing,
  parent: Parent,
  exit: Exit,
  box: PaperBox,
  { textMm, turned, type }: ExitLettering,
): void {
  const { side, point } = exit;
  const upright = isUpright(side);
  const edge = { left: box.leftMm, right: box.rightMm, top: box.topMm, bottom: box.bottomMm }[side];
  const out = side === 'left' || side === 'top' ? -1 : 1;
  const place = (along: number, across: number): PaperPoint =>
    upright ? at(across, along) : at(along, across);
  const along = upright ? point.yMm : point.xMm;
  const tip = place(along, edge + out * arrowMm);
  const end = place(textMm, edge + out * (arrowMm + jogMm));
  drawLine(parent, [point, tip, end], lines.leader);
  drawArrowHead(parent, tip, point);
  const across = edge + out * (arrowMm + jogMm + spacing.clearMm);
  if (!upright && !turned) {
    const texts = linesIn(exit.text);
    const base =
      side === 'top'
        ? across - drawing.metrics.descentMm(type) - (texts.length - 1) * linePitchMm(type)
        : across + drawing.metrics.ascentMm(type);
    drawLines(drawing, parent, texts, at(textMm, base), { type, align: 'middle' });
    return;
  }
  const align = side === 'left' || side === 'bottom' ? 'end' : 'start';
  const texts = linesIn(exit.text);
  const firstMm = textMm + type.capMm / 2 - ((texts.length - 1) * linePitchMm(type)) / 2;
  texts.forEach((text, nth) => {
    drawText(drawing, parent, text, place(firstMm + nth * linePitchMm(type), across), {
      type,
      align,
      turned,
    });
  });
}
