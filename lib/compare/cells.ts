import type { FigureName } from '../model/printed/figures.ts';
import { noFigure, printed } from '../model/printed/index.ts';
import { type LengthName, printedInches, printedLength, printedMetres } from '../model/printed/lengths.ts';
import type { Cell, CompareLook } from './table.ts';

/** A cell without a value. */
export const noCell: Cell = { text: noFigure, value: null };

/** A text of the plan, or none. */
export function textCell(text: string | null | undefined): Cell {
  return text === null || text === undefined || text === '' ? noCell : { text, value: text };
}

/** Names one after the other. */
export function listCell(names: readonly string[]): Cell {
  return textCell(names.join(', '));
}

/** A count. */
export function countCell(count: number, exact?: string): Cell {
  return { text: String(count), value: count, ...(exact !== undefined && { exact }) };
}

/** A figure as sheets print it. */
export function figureCell(name: FigureName, value: number | null | undefined): Cell {
  return value === null || value === undefined ? noCell : { text: printed(name, value), value };
}

/** A length on a board or a part: in inches with the millimetres beside it, where the shop writes inches. */
export function lengthCell(name: LengthName, lengthM: number, { style }: CompareLook): Cell {
  const { primary, mm } = printedLength(name, lengthM, style);
  return { text: style.system === 'inch' ? `${primary} (${mm})` : primary, value: lengthM };
}

/** A length of wire: feet and inches with the metres beside it, where the shop writes inches. */
export function wireCell(lengthM: number, { style }: CompareLook): Cell {
  const metres = printedMetres('wire', lengthM);
  const text = style.system === 'inch' ? `${printedInches('wire', lengthM)} (${metres})` : metres;
  return { text, value: lengthM };
}
