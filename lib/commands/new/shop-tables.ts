import { shopSchema } from '../../model/content/shop.ts';
import { text } from '../../model/fields.ts';
import { type AskedTable, column } from '../../model/survey/asked-table.ts';

/** What a new shop is asked for. */
export const shopTables = [
  {
    key: 'title',
    asks: 'The name of the shop, as it stands on every sheet',
    by: 'eye',
    columns: [column('title', 'name', shopSchema.shape.name, 'Quay Sound')],
    rows: 1,
  },
  {
    key: 'units',
    asks: 'What comes first on its sheets; files may be written in either',
    by: 'eye',
    columns: [column('units', 'units', text('inch'), 'inch')],
    rows: 1,
  },
  {
    key: 'samples',
    asks: 'Are an invented vehicle and a job in it wanted, to look at a finished sheet first',
    by: 'eye',
    columns: [column('samples', 'samples', text('yes'), 'yes')],
    rows: 1,
  },
] as const satisfies readonly AskedTable[];

/** The words for units that the command line takes. */
export const unitWords = ['inch', 'mm'] as const;
