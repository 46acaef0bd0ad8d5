import { type JobNesting, nestedGrain, nestedName, nestJobs } from '../../board/cut/sheet-pieces.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { sheetMark } from '../../model/plan/sheet-mark.ts';
import type { LengthName } from '../../model/printed/lengths.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { csvTable, listed, type TableOf } from '../csv/csv-table.ts';
import { type ExportedFile, fileName } from '../exported-file.ts';
import { type Exporter, type ExportRequest, originText } from '../exporter.ts';
import { dxfText } from '../machine/dxf.ts';
import { nestPageSvg } from '../nest/nest-page.ts';
import { nestPaths } from '../nest/nest-paths.ts';

/** The pieces of a job on stock sheets: a drawing and a file for the machine a sheet, and a table of the pieces. */
export const nest: Exporter = {
  title: 'boards, rails, pads and ribs nested on stock sheets',
  files: ({ plan, ...how }) => (plan.boards.length === 0 ? [] : nestedFiles([plan], how)),
};

/**
 * The pieces of several jobs together on stock sheets, by the house rules and in the units of the first: SVG and DXF
 * of every sheet, and CSV of the pieces and of the off-cuts to keep.
 */
export function nestedFiles(
  plans: readonly BuildPlan[],
  { metrics, choices: { paper, unit } }: Omit<ExportRequest, 'plan'>,
): ExportedFile[] {
  const [first] = plans;
  if (!first) return [];
  const nesting = nestJobs(plans);
  const boards = plans.flatMap((plan) => plan.boards);
  const origins = plans.map((plan) => originText(plan, sheetMark(plan)));
  const style = lengthStyle(first.shop);
  const sheets = nesting.sheets.flatMap((sheet): ExportedFile[] => {
    const stem = `nest-${sheet.stock.id}-${sheet.copy}`;
    const scene = { nesting, sheet, style, grain: nestedGrain(boards, sheet) };
    const svg = nestPageSvg({ scene, paper, metrics, origins });
    const content = dxfText(nestPaths(sheet, nesting.pieces), unit, [
      ...origins,
      `${nestedName(sheet)}, ${unit}, origin at its lower left corner, longer side lying`,
    ]);
    return [
      ...(svg === null ? [] : [{ name: fileName(stem, 'svg'), content: svg }]),
      { name: fileName(`${stem}-${unit}`, 'dxf'), content },
    ];
  });
  return [
    ...sheets,
    {
      name: fileName('nest-pieces', 'csv'),
      content: piecesTable({ shop: first.shop, job: jobsOf(plans) }, nesting),
    },
  ];
}

/** The jobs that are nested together, each with its revision in the same order. */
function jobsOf(plans: readonly BuildPlan[]): TableOf['job'] {
  return {
    id: listed(plans.map(({ job }) => job.id)),
    revision: listed(plans.map(({ job }) => job.revision)),
  };
}

function piecesTable(of: TableOf, { sheets, unplaced, pieces }: JobNesting): string {
  const titleOf = (id: string): string => pieces.find((piece) => piece.id === id)?.title ?? id;
  const rows = [
    ...sheets.flatMap(({ stock, copy, pieces: placed, offCuts }) => [
      ...placed.map((piece) => ({ sheet: stock.id, number: copy, what: titleOf(piece.id), ...piece })),
      ...offCuts.map((offCut, nth) => {
        return {
          sheet: stock.id,
          number: copy,
          what: 'off-cut to keep',
          id: 'off-cut',
          copy: nth + 1,
          ...offCut,
        };
      }),
    ]),
    ...unplaced.map(({ id, copy }) => {
      return { sheet: 'fits on no sheet', number: null, what: titleOf(id), id, copy };
    }),
  ];
  return csvTable(of, rows, [
    { title: 'sheet', value: ({ sheet }) => sheet },
    { title: 'sheet_number', value: ({ number }) => number },
    { title: 'piece', value: ({ id }) => id },
    { title: 'what', value: ({ what }) => what },
    { title: 'copy', value: ({ copy }) => copy },
    { title: 'x', length: 'position', lengthM: (row) => ('xM' in row ? row.xM : null) },
    { title: 'y', length: 'position', lengthM: (row) => ('yM' in row ? row.yM : null) },
    { title: 'width', length: cutOrLeft, lengthM: (row) => ('widthM' in row ? row.widthM : null) },
    { title: 'height', length: cutOrLeft, lengthM: (row) => ('heightM' in row ? row.heightM : null) },
    { title: 'turned', value: (row) => ('turned' in row ? (row.turned ? 'yes' : 'no') : null) },
  ]);
}

/** A piece is cut to its size; an off-cut is never told as larger than it is. */
function cutOrLeft({ id }: { readonly id: string }): LengthName {
  return id === 'off-cut' ? 'length-left' : 'cut';
}
