import { type NestPiece, nestPieces } from '../../../board/cut/nesting.ts';
import { liesOf, nestRules, sheetStock } from '../../../board/cut/sheet-pieces.ts';
import { type Placement, turnedSize } from '../../../board/layout/item.ts';
import { riserDefaults } from '../../../board/layout/risers.ts';
import type { StackLimits } from '../../../board/layout/stacked-search.ts';
import type { BoardShape } from '../../../board/shape/outline.ts';
import { boxOf } from '../../../board/shape/point.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { planHouseRules } from '../../house-rules.ts';
import { piecesOf } from '../../power/sizing/fuse-shelf.ts';
import { offCutsOfSheet } from './off-cuts.ts';

/**
 * Whether the rails of raised parts come out of what the board leaves of the sheets and off-cuts on the shelf. Where
 * the shelf has fewer than the board alone takes, these are to be bought anyway. None where the sheet is no stock.
 */
export function railStock(
  job: Job,
  { sheetId, sheet, given }: Board,
  { outline }: BoardShape,
): StackLimits['railsInStock'] {
  const stock = job.shop.stock[sheetId];
  if (!stock) return undefined;
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
  const rules = nestRules(planHouseRules(job));
  const alone = nestPieces([own], shelf, rules).sheets.filter((one) => one.stock.offCut === undefined).length;
  const whole = Math.max(piecesOf(stock), alone);
  const left = shelf.map((one) => (one.offCut === undefined ? { ...one, quantity: whole } : one));
  return (raised) =>
    nestPieces([own, ...raised.map((at) => railPiece(job, at, sheetId, sheet.thickness))], left, rules)
      .unplaced.length === 0;
}

/** The rails of one raised part, all its layers. */
function railPiece(
  job: Job,
  { item, turnDeg, heightM }: Placement,
  sheet: string,
  layerM: number,
): NestPiece {
  const print = job.devices.find(({ id }) => id === item)?.facts.footprint;
  const size = turnedSize(print ?? { widthM: 0, depthM: 0 }, turnDeg);
  return {
    id: `rails of ${item}`,
    sheet,
    widthM: Math.min(riserDefaults.railWidthM, size.xM / 2),
    heightM: size.yM,
    count: 2 * Math.round(heightM / layerM),
  };
}
