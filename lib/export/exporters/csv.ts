import { powerTables } from '../csv/power-tables.ts';
import { wireTables } from '../csv/wire-tables.ts';
import { workTables } from '../csv/work-tables.ts';
import { fileName } from '../exported-file.ts';
import type { Exporter } from '../exporter.ts';

/** Every table of a plan by the name of its file. */
export const csvTables = { ...wireTables, ...powerTables, ...workTables };

/** Every table as CSV, one file a table. */
export const csv: Exporter = {
  title: 'every table as CSV (RFC 4180)',
  files: ({ plan }) =>
    Object.entries(csvTables).map(([name, text]) => ({ name: fileName(name, 'csv'), content: text(plan) })),
};
