import { printed } from '../../model/printed/index.ts';
import { linePitchMm } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { types } from '../line-styles.ts';
import { at, boxAt, heightMm, type PaperBox, type PaperPoint, widthMm } from '../paper.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import { cutLines } from './cut-lines.ts';
import { lengthText, type NestScene, nestEntries, offCutEntries, sizeText } from './nest-list.ts';

/** Everything that is listed beside a stock sheet. */
export function listLines(scene: NestScene, metrics: TextMetrics): string[] {
  return [
    ...[...nestEntries(scene), ...offCutEntries(scene)].map(({ text }) => text),
    ...cutLines(scene, metrics),
  ];
}

/** Where a stock sheet and its list stand on paper. */
export interface NestLayout {
  readonly ratio: ScaleRatio;
  readonly sheet: PaperBox;
  /** The first baseline of the list. */
  readonly list: PaperPoint;
}

const gapMm = 6;
/** Distance of the list's lines. */
export const listPitchMm = linePitchMm(types.note) + 0.6;

/** The largest scale at which a stock sheet stands in a room with its list below or beside it; null where none does. */
export function nestLayout(scene: NestScene, room: PaperBox, metrics: TextMetrics): NestLayout | null {
  const lines = listLines(scene, metrics);
  const listMm = {
    wide: Math.max(0, ...lines.map((text) => metrics.widthMm(text, types.note))),
    high: lines.length * listPitchMm,
  };
  const { widthM, heightM } = scene.sheet.stock;
  for (const ratio of scaleRatios) {
    const [wide, high] = [(widthM * 1000) / ratio, (heightM * 1000) / ratio];
    if (wide + 2 * gapMm > widthMm(room) || high + 2 * gapMm > heightMm(room)) continue;
    const below =
      listMm.wide <= widthMm(room) - 2 * gapMm && high + listMm.high + 3 * gapMm <= heightMm(room);
    if (below) {
      const corner = middleCorner(room, Math.max(wide, listMm.wide), high + gapMm + listMm.high);
      const sheet = boxAt(corner.xMm, corner.yMm, wide, high);
      return { ratio, sheet, list: at(sheet.leftMm, sheet.bottomMm + gapMm) };
    }
    const beside = listMm.high <= heightMm(room) - gapMm && wide + listMm.wide + 3 * gapMm <= widthMm(room);
    if (beside) {
      const corner = middleCorner(room, wide + gapMm + listMm.wide, Math.max(high, listMm.high));
      const sheet = boxAt(corner.xMm, corner.yMm, wide, high);
      return { ratio, sheet, list: at(sheet.rightMm + gapMm, sheet.topMm + types.note.capMm) };
    }
  }
  return null;
}

/** The upper left corner of what stands in the middle of a room. */
function middleCorner(room: PaperBox, wideMm: number, highMm: number): PaperPoint {
  return at(room.leftMm + (widthMm(room) - wideMm) / 2, room.topMm + (heightMm(room) - highMm) / 2);
}

/** What is to be known before the saw is set: stock, cut, trim, how much is used, which way the grain runs. */
export function nestNotes({ nesting, sheet, style, grain }: NestScene): string[] {
  const { kerfM, trimM } = nesting.rules;
  const runs = { level: 'from left to right', upright: 'upwards' } as const;
  return [
    `Stock ${sizeText('length-left', sheet.stock, style)}; ${printed('share-used', sheet.used * 100)} used`,
    `Saw cut ${lengthText('made', kerfM, style)}, ${sheet.stock.offCut === undefined ? `edge ${lengthText('made', trimM, style)} not used` : 'used up to its edge'}`,
    'Dashed: off-cuts to keep; thin: saw cuts',
    ...(grain ? [`Grain runs ${runs[grain]}`] : []),
  ];
}
