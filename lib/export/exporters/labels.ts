import { sheetFormats } from '../../draw/sheet/sheet-format.ts';
import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { fileName } from '../exported-file.ts';
import { type Exporter, originText } from '../exporter.ts';
import { labelRows } from '../labels/labels-of-both-ends.ts';
import { labelSheets } from '../labels/labels-on-stock.ts';

/** Sheets of wire labels at 1:1; the table of the same labels for a label printer is among the CSV. */
export const labels: Exporter = {
  title: 'wire labels on label stock, two for each end',
  files: ({ plan, metrics, choices: { paper, labelStock } }) =>
    labelSheets({
      labels: labelRows(plan),
      stock: labelStock,
      paper: sheetFormats[paper],
      metrics,
      origin: originText(plan, sheetMark(plan)),
    }).map((content, index) => ({
      name: fileName(`labels-${paper.toLowerCase()}-${index + 1}`, 'svg'),
      content,
    })),
};
