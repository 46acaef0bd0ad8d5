import type { TextMetrics } from '../../draw/lettering/text-metrics.ts';
import { type TypeStyle, types } from '../../draw/line-styles.ts';
import { boxAt } from '../../draw/paper.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import type { SheetMark } from '../../model/plan/sheet-mark.ts';
import { fittedText, haloed } from '../fitted-text.ts';
import type { FullSize } from '../machine/full-size.ts';
import { element, pathData, svgOf } from '../svg-markup.ts';
import { boardMarks } from './board-marks.ts';
import { lyingBars, standingBar } from './measure-bar.ts';
import { neighbour, type Tile, type Tiling } from './tiling.ts';

export interface TileRequest {
  readonly board: PlanBoard;
  readonly full: FullSize;
  readonly tiling: Tiling;
  readonly metrics: TextMetrics;
  /** What each page says it was made from. */
  readonly issue: string;
  /** Why nobody may build from it; null where it is released. */
  readonly mark: SheetMark | null;
}

const joins = [
  { columns: -1, rows: 0 },
  { columns: 1, rows: 0 },
  { columns: 0, rows: -1 },
  { columns: 0, rows: 1 },
] as const;

/** One tile at full size: its part of the board, the marks by which it meets its neighbours, bars and name. */
export function tileSvg(request: TileRequest, tile: Tile): string {
  const { board, full, tiling, metrics, issue } = request;
  const { page } = tiling;
  const { leftMm, topMm, windowWidthMm, windowHeightMm } = page;
  const clip = `window-${board.id}-${tile.name}`;
  const shift = `translate(${(leftMm - tile.xMm).toFixed(3)} ${(topMm - tile.yMm).toFixed(3)})`;
  const window = { x: leftMm, y: topMm, width: windowWidthMm, height: windowHeightMm };
  const inside = [
    ...boardMarks(board, full.view, metrics, boxAt(tile.xMm, tile.yMm, windowWidthMm, windowHeightMm)),
    joinMarks(tiling, tile, metrics),
  ];
  const words = {
    title: `${board.title}, tile ${tile.name}`,
    description: `${issue}. Full-size template, tile ${tile.name}.`,
  };
  return svgOf(page, words, [
    element('clipPath', { id: clip }, [element('rect', window)]),
    element('g', { 'clip-path': `url(#${clip})` }, [element('g', { transform: shift }, inside)]),
    element('rect', { ...window, stroke: '#000000', 'stroke-width': 0.18 }),
    ...foot(request, tile),
  ]);
}

/** Everything below the window, and the bar beside it. */
function foot({ board, tiling, metrics, issue, mark }: TileRequest, tile: Tile): string[] {
  const { page } = tiling;
  const belowMm = page.topMm + page.windowHeightMm;
  const rightMm = page.leftMm + page.windowWidthMm;
  const line = (text: string, yMm: number, capMm: number, type: TypeStyle = types.note): string =>
    fittedText(
      { text, xMm: rightMm, yMm, capMm, roomMm: page.windowWidthMm - 122, type, align: 'end' },
      metrics,
    );
  return [
    lyingBars(page.leftMm, belowMm + 5, metrics),
    standingBar(page.leftMm - 4, belowMm, metrics),
    element('g', { fill: '#000000' }, [
      line(`Tile ${tile.name}${mark === null ? '' : `, ${mark.word}`}`, belowMm + 6.5, 3.5, types.heading),
      line(board.title, belowMm + 11, 2.5),
      line(issue, belowMm + 15, 2),
      line('Print at 100 %, then measure both bars', belowMm + 18.5, 2),
    ]),
  ];
}

/**
 * The joins of a tile, in the places of the whole board, so that they fall upon the same marks of its neighbour:
 * a line in the middle of the overlap, two crosses on it, and the neighbour's name.
 */
function joinMarks(tiling: Tiling, tile: Tile, metrics: TextMetrics): string {
  const marks = joins.flatMap(({ columns, rows }) => {
    const other = neighbour(tiling, tile, columns, rows);
    return other ? joinMark(tiling, tile, other, metrics) : [];
  });
  return element('g', { stroke: '#000000', 'stroke-width': 0.18 }, marks.length > 0 ? marks : ['']);
}

function joinMark(tiling: Tiling, tile: Tile, other: Tile, metrics: TextMetrics): string[] {
  const { overlapMm, stepXMm, stepYMm } = tiling;
  const upright = other.row === tile.row;
  const seamMm = upright
    ? Math.max(tile.xMm, other.xMm) + overlapMm / 2
    : Math.max(tile.yMm, other.yMm) + overlapMm / 2;
  const startMm = upright ? tile.yMm : tile.xMm;
  const stepMm = upright ? stepYMm : stepXMm;
  const place = (alongMm: number, offMm = 0) =>
    upright ? { xMm: seamMm + offMm, yMm: alongMm } : { xMm: alongMm, yMm: seamMm + offMm };
  const crosses = [0.3, 0.75].map((share) => {
    const alongMm = startMm + overlapMm + share * (stepMm - overlapMm);
    return [
      element('path', { d: pathData([place(alongMm, -4), place(alongMm, 4)]) }),
      element('circle', { cx: place(alongMm).xMm, cy: place(alongMm).yMm, r: 2 }),
    ].join('\n');
  });
  const line = element('path', {
    d: pathData([place(startMm), place(startMm + stepMm + overlapMm)]),
    'stroke-dasharray': '6 1.5 0.5 1.5',
  });
  const ahead = (upright ? other.column > tile.column : other.row > tile.row) ? -1 : 1;
  const named = fittedText(
    {
      text: `joins ${other.name}`,
      ...namePlace(place(startMm + overlapMm + 0.5 * (stepMm - overlapMm)), upright, ahead),
      capMm: 2.5,
      roomMm: 30,
      type: types.note,
      align: upright ? (ahead < 0 ? 'end' : 'start') : 'start',
    },
    metrics,
  );
  return [line, ...crosses, element('g', haloed, [named])];
}

/** A little inside of the join, on the tile's own side. */
function namePlace(
  { xMm, yMm }: { readonly xMm: number; readonly yMm: number },
  upright: boolean,
  ahead: number,
): { readonly xMm: number; readonly yMm: number } {
  if (upright) return { xMm: xMm + ahead * 2, yMm };
  return { xMm, yMm: ahead < 0 ? yMm - 1.5 : yMm + 4 };
}
