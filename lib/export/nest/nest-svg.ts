import type { NestedPiece, NestedSheet } from '../../board/nesting.ts';
import { bulgePath } from '../../draw/bulge-path.ts';
import { largestScale, type ScaleRatio, scaleText } from '../../draw/scale.ts';
import { type TypeStyle, types } from '../../draw/style.ts';
import type { TextMetrics } from '../../draw/text-metrics.ts';
import { formatLength, type LengthStyle } from '../../model/length-text.ts';
import { fittedText } from '../fitted-text.ts';
import { fullSizeView } from '../machine/full-size.ts';
import { element, svgOf } from '../svg-markup.ts';
import type { JobPiece } from './job-pieces.ts';

export interface NestDrawing {
  readonly sheet: NestedSheet;
  readonly pieces: readonly JobPiece[];
  readonly paper: { readonly widthMm: number; readonly heightMm: number };
  readonly style: LengthStyle;
  readonly metrics: TextMetrics;
  readonly kerfM: number;
  /** What the page says of itself. */
  readonly origin: string;
}

const marginMm = 12;
const headMm = 20;
const lineMm = 4.6;

interface Frame {
  readonly ratio: ScaleRatio;
  readonly leftMm: number;
  readonly topMm: number;
  readonly heightM: number;
}

/** One stock sheet with its pieces and off-cuts, numbered, and the list of what the numbers mean. */
export function nestSvg(drawing: NestDrawing): string {
  const { sheet, paper, metrics, style, origin, kerfM } = drawing;
  const { stock, copy, used } = sheet;
  const names = [...new Set(sheet.pieces.map(({ id }) => id))];
  const listMm = lineMm * (names.length + 1);
  const room = {
    widthMm: paper.widthMm - 2 * marginMm,
    heightMm: paper.heightMm - 2 * marginMm - headMm - listMm,
  };
  const ratio = largestScale(stock, room) ?? 100;
  const frame: Frame = { ratio, leftMm: marginMm, topMm: marginMm + headMm, heightM: stock.heightM };
  const title = `Nesting: ${stock.id}, sheet ${copy}`;
  const size = sizeText(stock, style);
  const listTopMm = frame.topMm + (stock.heightM * 1000) / ratio + lineMm + 1;
  const words = (text: string, yMm: number, capMm: number, type: TypeStyle = types.note): string =>
    fittedText({ text, xMm: marginMm, yMm, capMm, roomMm: room.widthMm, type, align: 'start' }, metrics);
  const facts = `${size}, scale ${scaleText(ratio)}, ${Math.round(used * 100)} % used, kerf ${lengthText(kerfM, style)}`;
  return `${svgOf(paper, { title, description: `${origin}. ${facts}.` }, [
    element('g', { fill: '#000000' }, [
      words(title, marginMm + 5, 5, types.heading),
      words(facts, marginMm + 11, 2.5),
      words(origin, marginMm + 15.5, 2.5),
      ...names.map((id, at) => words(listLine(drawing, id, at + 1), listTopMm + at * lineMm, 2.5)),
      words(
        'Dashed: off-cuts to keep. Sizes: width by height as they lie.',
        listTopMm + names.length * lineMm,
        2.5,
      ),
    ]),
    element('g', { stroke: '#000000', 'stroke-width': 0.5 }, [rectangle(frame, { xM: 0, yM: 0, ...stock })]),
    element(
      'g',
      { stroke: '#000000', 'stroke-width': 0.35 },
      sheet.pieces.map((piece) => pieceMark(drawing, frame, piece)),
    ),
    ...offCutMarks(drawing, frame),
    element(
      'g',
      { fill: '#000000' },
      sheet.pieces.map((piece) => pieceNumber(drawing, frame, piece, names.indexOf(piece.id) + 1)),
    ),
  ])}\n`;
}

function listLine({ sheet, style }: NestDrawing, id: string, number: number): string {
  const own = sheet.pieces.filter((piece) => piece.id === id);
  const [first] = own;
  const unturned = first?.turned ? { widthM: first.heightM, heightM: first.widthM } : first;
  const size = unturned ? sizeText(unturned, style) : '';
  return `${number}: ${own.length} x ${id}, ${size}`;
}

function rectangle(
  { ratio, leftMm, topMm, heightM }: Frame,
  at: { readonly xM: number; readonly yM: number; readonly widthM: number; readonly heightM: number },
): string {
  const mm = (lengthM: number): number => (lengthM * 1000) / ratio;
  return element('rect', {
    x: leftMm + mm(at.xM),
    y: topMm + mm(heightM - at.yM - at.heightM),
    width: mm(at.widthM),
    height: mm(at.heightM),
  });
}

/** The line that a piece is cut along, turned as it lies; its rectangle where it has no other. */
function pieceMark({ pieces }: NestDrawing, frame: Frame, piece: NestedPiece): string {
  const loops = pieces.find(({ id }) => id === piece.id)?.loops ?? [];
  const [outline] = loops;
  if (!outline) return rectangle(frame, piece);
  const { view } = fullSizeView(outline);
  const scale = 1 / frame.ratio;
  const leftMm = frame.leftMm + piece.xM * 1000 * scale;
  const topMm = frame.topMm + (frame.heightM - piece.yM - piece.heightM) * 1000 * scale;
  const turn = piece.turned ? ` translate(${(piece.widthM * 1000).toFixed(3)} 0) rotate(90)` : '';
  const transform = `translate(${leftMm.toFixed(3)} ${topMm.toFixed(3)}) scale(${scale})${turn}`;
  return element(
    'g',
    { transform, 'stroke-width': 0.35 * frame.ratio },
    loops.map((loop) => element('path', { d: bulgePath(loop, view) })),
  );
}

function pieceNumber({ metrics }: NestDrawing, frame: Frame, piece: NestedPiece, number: number): string {
  const named = `${number} ${piece.id}`;
  const roomMm = (piece.widthM * 1000) / frame.ratio - 1;
  const capMm = Math.min(3.5, ((piece.heightM * 1000) / frame.ratio) * 0.6);
  const wide = (metrics.widthMm(named, types.item) * capMm) / types.item.capMm;
  const text = wide <= roomMm ? named : String(number);
  return middleText(frame, piece, text, capMm, roomMm, metrics, types.item);
}

function middleText(
  { ratio, leftMm, topMm, heightM }: Frame,
  at: { readonly xM: number; readonly yM: number; readonly widthM: number; readonly heightM: number },
  text: string,
  capMm: number,
  roomMm: number,
  metrics: TextMetrics,
  type: TypeStyle,
): string {
  return fittedText(
    {
      text,
      xMm: leftMm + ((at.xM + at.widthM / 2) * 1000) / ratio,
      yMm: topMm + ((heightM - at.yM - at.heightM / 2) * 1000) / ratio + capMm / 2,
      capMm,
      roomMm: Math.max(0.5, roomMm),
      type,
      align: 'middle',
    },
    metrics,
  );
}

function offCutMarks({ sheet, style, metrics }: NestDrawing, frame: Frame): string[] {
  if (sheet.offCuts.length === 0) return [];
  const names = sheet.offCuts.map((offCut) => {
    const roomMm = (offCut.widthM * 1000) / frame.ratio - 2;
    return middleText(frame, offCut, sizeText(offCut, style), 2.5, roomMm, metrics, types.note);
  });
  return [
    element(
      'g',
      { stroke: '#000000', 'stroke-width': 0.25, 'stroke-dasharray': '3 1.5' },
      sheet.offCuts.map((offCut) => rectangle(frame, offCut)),
    ),
    element('g', { fill: '#000000' }, names),
  ];
}

function sizeText(size: { readonly widthM: number; readonly heightM: number }, style: LengthStyle): string {
  return `${lengthText(size.widthM, style)} x ${lengthText(size.heightM, style)}`;
}

function lengthText(lengthM: number, style: LengthStyle): string {
  return formatLength(lengthM, style).primary;
}
