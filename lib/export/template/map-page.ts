import { bulgePath } from '../../draw/bulge-path.ts';
import { type TypeStyle, types } from '../../draw/line-styles.ts';
import { at } from '../../draw/paper.ts';
import { fittedText, haloed } from '../fitted-text.ts';
import { element, svgOf } from '../svg-markup.ts';
import { lyingBars, standingBar } from './measure-bar.ts';
import type { TileRequest } from './tile-page.ts';

/** How the template is put together. */
function instructions(pages: number, overlapMm: number): string[] {
  return [
    `${pages} tiles follow. Print all pages at 100 %, without fitting them to the paper.`,
    'Measure both bars on a page before anything is cut: 100 mm each, and 4 in.',
    'If a bar is off by more than half a millimetre, correct the scale of the print and start again.',
    `Neighbours overlap by ${overlapMm} mm: lay one on the other so that the crosses in rings fall upon each other.`,
    'Tape them, lay them on the mounting side of the board, and prick the centres of the holes.',
  ];
}

/** The first page: how the tiles lie, by name, and what to do. */
export function mapSvg(request: TileRequest): string {
  const { board, tiling, metrics, issue, mark } = request;
  const origin = mark === null ? issue : `${mark.word}. ${mark.reason}. ${issue}`;
  const { page } = tiling;
  const lines = instructions(tiling.tiles.length, tiling.overlapMm);
  const headMm = 14;
  const textMm = headMm + 2 + lines.length * 5;
  const line = (text: string, yMm: number, capMm: number, type: TypeStyle = types.note): string =>
    fittedText(
      { text, xMm: page.leftMm, yMm, capMm, roomMm: page.windowWidthMm, type, align: 'start' },
      metrics,
    );
  const belowMm = page.topMm + page.windowHeightMm;
  return svgOf(page, { title: `${board.title}: page map`, description: `${origin}. Page map.` }, [
    element('g', { fill: '#000000' }, [
      line(`${board.title}: full-size template`, page.topMm + 5, 5, types.heading),
      line(origin, page.topMm + 11, 2.5),
      ...lines.map((text, index) => line(`${index + 1}. ${text}`, page.topMm + headMm + 4 + index * 5, 2.5)),
    ]),
    mapOf(request, { topMm: page.topMm + textMm + 6, bottomMm: belowMm - 4 }),
    lyingBars(page.leftMm, belowMm + 5, metrics),
    standingBar(page.leftMm - 4, belowMm, metrics),
  ]);
}

function mapOf(
  { board, full, tiling, metrics }: TileRequest,
  room: { readonly topMm: number; readonly bottomMm: number },
): string {
  const { page, columns, rows, stepXMm, stepYMm, overlapMm, tiles } = tiling;
  const wholeWidthMm = columns * stepXMm + overlapMm;
  const wholeHeightMm = rows * stepYMm + overlapMm;
  const scale = Math.min(page.windowWidthMm / wholeWidthMm, (room.bottomMm - room.topMm) / wholeHeightMm);
  const [first] = tiles;
  const shift = at(page.leftMm - (first?.xMm ?? 0) * scale, room.topMm - (first?.yMm ?? 0) * scale);
  const windows = tiles.map(({ xMm, yMm }) =>
    element('rect', {
      x: shift.xMm + xMm * scale,
      y: shift.yMm + yMm * scale,
      width: page.windowWidthMm * scale,
      height: page.windowHeightMm * scale,
    }),
  );
  const names = tiles.map(({ name, xMm, yMm }) =>
    fittedText(
      {
        text: name,
        xMm: shift.xMm + (xMm + overlapMm) * scale + 1.5,
        yMm: shift.yMm + (yMm + overlapMm) * scale + 5,
        capMm: 3.5,
        roomMm: 20,
        type: types.item,
        align: 'start',
      },
      metrics,
    ),
  );
  const transform = `translate(${shift.xMm.toFixed(3)} ${shift.yMm.toFixed(3)}) scale(${scale.toFixed(6)})`;
  const loops = [board.outline, ...board.cutouts].map((loop) =>
    element('path', { d: bulgePath(loop, full.view) }),
  );
  return element('g', {}, [
    element('g', { transform, stroke: '#000000', 'stroke-width': 0.5 / scale }, loops),
    element('g', { stroke: '#000000', 'stroke-width': 0.18, 'stroke-dasharray': '3 1' }, windows),
    element('g', haloed, names),
  ]);
}
