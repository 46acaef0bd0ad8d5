import { type NestPiece, nestPieces } from '../../../board/cut/nesting.ts';
import { liesOf, nestRules, sheetStock } from '../../../board/cut/sheet-pieces.ts';
import { type Placement, turnedSize } from '../../../board/layout/item.ts';
import type { BoardShape } from '../../../board/shape/outline.ts';
import { boxOf } from '../../../board/shape/point.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { piecesOf } from '../../../shelf/shelf-lengths.ts';
import { planHouseRules } from '../../plan-house-rules.ts';
import { offCutsOfSheet } from './off-cuts-on-shelf.ts';

/** What the rails of raised parts are cut from, and how large these parts are. */
export interface RailSupply {
  /** The board, which is cut first. */
  readonly own: NestPiece;
  readonly shelf: ReturnType<typeof sheetStock>;
  readonly rules: ReturnType<typeof nestRules>;
  readonly layerM: number;
  readonly railWidthM: number;
  /** Footprints of the parts of the job, by device. */
  readonly prints: Readonly<Record<string, { readonly widthM: number; readonly depthM: number }>>;
}

/**
 * The sheets and off-cuts on the shelf that rails of raised parts are cut from beside the board. Where the shelf has
 * fewer than the board alone takes, these are to be bought anyway. Null where the sheet is no stock.
 */
export function railSupply(
  job: Job,
  { sheetId, sheet, given }: Board,
  { outline }: BoardShape,
): RailSupply | null {
  const stock = job.shop.stock[sheetId];
  if (!stock) return null;
  const { width, height, grain: sheetGrain = null } = sheet;
  const cut = { sheetWidthM: width, sheetHeightM: height, sheetGrain, grain: given.outline.grain ?? null };
  const box = boxOf(outline);
  const size = { widthM: box.maxX - box.minX, heightM: box.maxY - box.minY };
  const own: NestPiece = { id: 'board', sheet: sheetId, ...size, lies: liesOf(cut) };
  const shelf = sheetStock([
    {
      boards: [{ ...cut, sheet: sheetId, material: sheet.material, ribs: [] }],
      offCuts: offCutsOfSheet(stock, sheetId),
    },
  ]);
  const rules = nestRules({ rules: planHouseRules(job) });
  const alone = nestPieces([own], shelf, rules).sheets.filter((one) => one.stock.offCut === undefined).length;
  const whole = Math.max(piecesOf(stock), alone);
  const left = shelf.map((one) => (one.offCut === undefined ? { ...one, quantity: whole } : one));
  const prints = Object.fromEntries(
    job.devices.flatMap(({ id, facts: { footprint } }) =>
      footprint ? [[id, { widthM: footprint.widthM, depthM: footprint.depthM }] as const] : [],
    ),
  );
  const railWidthM = job.rules['riser-rail'].value;
  return { own, shelf: left, rules, layerM: sheet.thickness, railWidthM, prints };
}

/** Whether the rails of raised parts come out of what the board leaves on the shelf. */
export function railsComeOut(supply: RailSupply, raised: readonly Placement[]): boolean {
  const { own, shelf, rules } = supply;
  const rails = raised.map((at) => railPiece(supply, at));
  return nestPieces([own, ...rails], shelf, rules).unplaced.length === 0;
}

/** The rails of one raised part, all its layers. */
function railPiece(
  { own, layerM, railWidthM, prints }: RailSupply,
  { item, turnDeg, heightM }: Placement,
): NestPiece {
  const size = turnedSize(prints[item] ?? { widthM: 0, depthM: 0 }, turnDeg);
  return {
    id: `rails of ${item}`,
    sheet: own.sheet,
    widthM: Math.min(railWidthM, size.xM / 2),
    heightM: size.yM,
    count: 2 * Math.round(heightM / layerM),
  };
}
