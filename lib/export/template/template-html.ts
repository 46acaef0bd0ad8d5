import type { TextMetrics } from '../../draw/lettering/text-metrics.ts';
import type { UsualFormatName } from '../../draw/sheet/sheet-format.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { fullSizeView } from '../machine/full-size.ts';
import { escaped } from '../svg-markup.ts';
import { mapSvg } from './map-page.ts';
import { type TileRequest, tileSvg } from './tile-page.ts';
import { tilingOf } from './tiling.ts';

const papers = { Letter: 'letter', A4: 'A4' } as const satisfies Record<UsualFormatName, string>;

/** A board's full-size template as one HTML document that prints as it is: the page map, then a page a tile. */
export function templateHtml(
  board: PlanBoard,
  paper: UsualFormatName,
  metrics: TextMetrics,
  origin: Pick<TileRequest, 'issue' | 'mark'>,
): string {
  const full = fullSizeView(board.outline);
  const tiling = tilingOf(full, paper);
  const request: TileRequest = { board, full, tiling, metrics, ...origin };
  const lying = tiling.page.widthMm > tiling.page.heightMm;
  const pages = [mapSvg(request), ...tiling.tiles.map((tile) => tileSvg(request, tile))];
  return [
    '<!doctype html>',
    '<html lang="en">',
    `<head><meta charset="utf-8"><title>${escaped(`${board.title}: full-size template`)}</title>`,
    `<style>@page { size: ${papers[paper]}${lying ? ' landscape' : ''}; margin: 0 }`,
    'html, body { margin: 0 } section { break-after: page; overflow: hidden }',
    // A hair less than the page, so that rounding to pixels never makes an empty one.
    `section { height: ${(tiling.page.heightMm - 0.2).toFixed(1)}mm } section:last-child { break-after: auto }`,
    'svg { display: block } @media screen { section { border-bottom: 1px dashed #888 } }</style></head>',
    '<body>',
    ...pages.map((page) => `<section>${page}</section>`),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
