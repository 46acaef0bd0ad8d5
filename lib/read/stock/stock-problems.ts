import type { Shop } from '../../model/content/shop.ts';
import { isOnReel, type Part } from '../../model/kinds/index.ts';
import type { Problem } from '../../model/problem.ts';
import { lookPart } from '../names/look-part.ts';
import type { UnreadNames } from '../names/unread-names.ts';
import type { Shaped } from '../read-file.ts';
import { Report } from '../report.ts';
import { pricedFault } from './stock-row.ts';

/** What is wrong with the stock and the prices of a shop, by the parts that they are of. */
export function stockProblems(
  { placed, value }: Shaped<Shop>,
  parts: Readonly<Record<string, Part>>,
  unread: UnreadNames,
): readonly Problem[] {
  const report = new Report(placed, unread);
  for (const [id, stock] of Object.entries(value.stock)) {
    const part = lookPart(report, ['stock', id], id, parts, 'any');
    if (part && 'reels' in stock !== isOnReel(part))
      report.at(
        ['stock', id],
        `"${id}" (${part.kind}) is kept ${isOnReel(part) ? 'on the reel' : 'by the piece'}`,
        isOnReel(part)
          ? 'write reels: with the length left on each, such as reels: [50 ft]'
          : 'write pieces: with how many there are, such as pieces: 4',
      );
    if (part && part.kind !== 'board-sheet' && 'pieces' in stock && Object.keys(stock['off-cuts']).length > 0)
      report.atKey(
        ['stock', id, 'off-cuts'],
        `"${id}" has off-cuts, but it is no board sheet (${part.kind})`,
        'leave off-cuts: to board sheets; for what comes on a reel write reels:',
      );
    if (part?.kind === 'board-sheet' && 'pieces' in stock)
      for (const [name, cut] of Object.entries(stock['off-cuts']))
        for (const side of ['width', 'height'] as const)
          if (cut[side] > part[side])
            report.at(
              ['stock', id, 'off-cuts', name, side],
              `the off-cut ${name} of ${id} is larger than the whole sheet`,
              'measure it along the sides of the whole sheet, and check the unit',
            );
  }
  priceProblems(value, parts, report);
  return report.problems;
}

function priceProblems(
  { prices, currency, estimate }: Pick<Shop, 'prices' | 'currency' | 'estimate'>,
  parts: Readonly<Record<string, Part>>,
  report: Report,
): void {
  if (currency === undefined && Object.keys(prices).length > 0)
    report.atKey(
      ['prices'],
      'there are prices, but no currency',
      'write currency: before them, such as currency: EUR',
    );
  if (currency === undefined && estimate.labour !== undefined)
    report.atKey(
      ['estimate', 'labour'],
      'there is a rate, but no currency',
      'write currency: beside it, such as currency: EUR',
    );
  for (const [id, own] of Object.entries(prices)) {
    const part = lookPart(report, ['prices', id], id, parts, 'any');
    const fault = part ? pricedFault(part, own) : null;
    if (part && fault !== null)
      report.at(
        ['prices', id],
        `"${id}": ${fault}`,
        isOnReel(part) ? 'write it per ft, per m or per 50 ft' : 'write it each, or per so many',
      );
  }
}
