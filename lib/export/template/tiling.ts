import { sheetFormats, type UsualFormatName } from '../../draw/sheet/sheet-format.ts';

/** The part of a page that shows the board, millimetres of paper; the rest holds margins, bars and words. */
export interface TilePage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly leftMm: number;
  readonly topMm: number;
  /** Size of the window on the board. */
  readonly windowWidthMm: number;
  readonly windowHeightMm: number;
}

/** One tile: its name (row letter, column number) and where its window begins on the board, y down. */
export interface Tile {
  readonly name: string;
  readonly column: number;
  readonly row: number;
  readonly xMm: number;
  readonly yMm: number;
}

export interface Tiling {
  readonly page: TilePage;
  readonly columns: number;
  readonly rows: number;
  readonly overlapMm: number;
  /** From the start of one window to the start of the next. */
  readonly stepXMm: number;
  readonly stepYMm: number;
  readonly tiles: readonly Tile[];
}

/** Printers leave some 6 mm bare at the edges of the paper (cp); the strips hold the bars and the words. */
const marginMm = 10;
const leftStripMm = 9;
const footStripMm = 20;
const overlapMm = 12;

/** The page of tiles on a paper, upright or lying. */
export function tilePage(paper: UsualFormatName, lying: boolean): TilePage {
  const size = sheetFormats[paper];
  const [widthMm, heightMm] = lying ? [size.heightMm, size.widthMm] : [size.widthMm, size.heightMm];
  const leftMm = marginMm + leftStripMm;
  return {
    widthMm,
    heightMm,
    leftMm,
    topMm: marginMm,
    windowWidthMm: widthMm - leftMm - marginMm,
    windowHeightMm: heightMm - 2 * marginMm - footStripMm,
  };
}

/** Tiles that cover a rectangle with overlap, on the paper upright or lying, whichever takes fewer pages. */
export function tilingOf(
  size: { readonly widthMm: number; readonly heightMm: number },
  paper: UsualFormatName,
): Tiling {
  const upright = tiled(size, tilePage(paper, false));
  const lying = tiled(size, tilePage(paper, true));
  return lying.tiles.length < upright.tiles.length ? lying : upright;
}

function tiled(size: { readonly widthMm: number; readonly heightMm: number }, page: TilePage): Tiling {
  const stepXMm = page.windowWidthMm - overlapMm;
  const stepYMm = page.windowHeightMm - overlapMm;
  const columns = pagesFor(size.widthMm, stepXMm);
  const rows = pagesFor(size.heightMm, stepYMm);
  // Whatever room is left over stands evenly at both ends.
  const startXMm = (size.widthMm - (columns * stepXMm + overlapMm)) / 2;
  const startYMm = (size.heightMm - (rows * stepYMm + overlapMm)) / 2;
  const tiles = Array.from({ length: rows * columns }, (_, index): Tile => {
    const [row, column] = [Math.floor(index / columns), index % columns];
    return {
      name: `${String.fromCharCode(65 + (row % 26))}${column + 1}`,
      row,
      column,
      xMm: startXMm + column * stepXMm,
      yMm: startYMm + row * stepYMm,
    };
  });
  return { page, columns, rows, overlapMm, stepXMm, stepYMm, tiles };
}

function pagesFor(lengthMm: number, stepMm: number): number {
  return Math.max(1, Math.ceil((lengthMm - overlapMm) / stepMm));
}

/** The tile beside another one, where there is one. */
export function neighbour({ tiles }: Tiling, tile: Tile, columns: number, rows: number): Tile | null {
  return tiles.find(({ column, row }) => column === tile.column + columns && row === tile.row + rows) ?? null;
}
