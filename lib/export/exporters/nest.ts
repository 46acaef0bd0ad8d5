import { nestDefaults, nestPieces } from '../../board/nesting.ts';
import { draftReason } from '../../draw/page.ts';
import { sheetSize } from '../../draw/sheet-format.ts';
import { csvTable } from '../csv/csv-table.ts';
import { type ExportedFile, fileName } from '../exported-file.ts';
import { type Exporter, type ExportRequest, originText } from '../exporter.ts';
import { jobPieces, jobStock } from '../nest/job-pieces.ts';
import { nestSvg } from '../nest/nest-svg.ts';

/** The pieces of a job on stock sheets: a drawing a sheet, and a table of the pieces. */
export const nest: Exporter = {
  title: 'boards, rails and pads nested on stock sheets',
  files: (request) => (request.plan.boards.length === 0 ? [] : nestFiles(request)),
};

function nestFiles({ plan, metrics, choices: { paper } }: ExportRequest): ExportedFile[] {
  const pieces = jobPieces([plan]);
  const { sheets, unplaced } = nestPieces(pieces, jobStock([plan]));
  const { units, fraction } = plan.shop;
  const system = units === 'inch' ? 'inch' : 'mm';
  const drawings = sheets.map((sheet): ExportedFile => {
    const content = nestSvg({
      sheet,
      pieces,
      paper: sheetSize({ name: paper, orientation: 'landscape' }),
      style: { system, fraction },
      metrics,
      kerfM: nestDefaults.kerfM,
      origin: originText(plan, draftReason(plan)),
    });
    return { name: fileName(`nest-${sheet.stock.id}-${sheet.copy}`, 'svg'), content };
  });
  const rows = [
    ...sheets.flatMap(({ stock, copy, pieces: placed }) =>
      placed.map((piece) => ({ sheet: stock.id, number: copy, ...piece })),
    ),
    ...unplaced.map(({ id, copy }) => ({ sheet: 'fits on no sheet', number: null, id, copy })),
  ];
  const content = csvTable(plan.shop, rows, [
    { title: 'sheet', value: ({ sheet }) => sheet },
    { title: 'sheet_number', value: ({ number }) => number },
    { title: 'piece', value: ({ id }) => id },
    { title: 'copy', value: ({ copy }) => copy },
    { title: 'x', lengthM: (row) => ('xM' in row ? row.xM : null) },
    { title: 'y', lengthM: (row) => ('yM' in row ? row.yM : null) },
    { title: 'width', lengthM: (row) => ('widthM' in row ? row.widthM : null) },
    { title: 'height', lengthM: (row) => ('heightM' in row ? row.heightM : null) },
    { title: 'turned', value: (row) => ('turned' in row ? (row.turned ? 'yes' : 'no') : null) },
  ]);
  return [...drawings, { name: fileName('nest-pieces', 'csv'), content }];
}
