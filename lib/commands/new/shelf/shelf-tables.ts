import { text } from '../../../model/fields.ts';
import { type AskedTable, column } from '../../../model/survey/asked-table.ts';

/** What is asked of a shelf: the things that lie there, then whether these are all. */
export const shelfTables = [
  {
    key: 'thing',
    asks: 'What lies on the shelf, one thing a line: what it is, its size, how much of it',
    by: 'eye',
    hint:
      'A part of the catalogue by its name, or wire, cable, fuses, holders, lugs, ferrules, screws, grommets, coverings and sheets in words: power wire 4 AWG red 30 ft + 8 ft; ' +
      'large bolt-in fuse 80 A x4; blade fuse holder x2; phono lead 17 ft x4; ring lug 4 AWG M8 x10; bolt M6 30 mm x20; birch plywood 15 mm 24 x 48 in x1. What the ' +
      'catalogue lacks becomes a part of it; more of its data goes behind commas: , strip 18 mm. What is to be had and not there yet ' +
      'has none behind it: bolt M6 30 mm none.',
    columns: [column('thing', 'thing', text('wire'), 'ring lug 4 AWG M8 x10')],
    rows: 40,
  },
  {
    key: 'whole',
    asks: 'Is that the whole shelf? yes takes out of the stock whatever was not told',
    by: 'eye',
    columns: [column('whole', 'whole', text('no'), 'no')],
    rows: 1,
  },
] as const satisfies readonly AskedTable[];
