import { dimensions } from '../../../model/quantity/dimensions.ts';
import type { Page, SiteContext } from '../../page/page.ts';
import { strong, type Table, tableOf } from '../../sheets/table.ts';
import { addresses } from '../../site/addresses.ts';
import { cataloguePage } from '../catalogue-page.ts';

export const quantitiesTitle = 'Quantities and units';
export const quantitiesSummary =
  'A quantity is written with its unit, the way it is said. A bare number is an error.';

/** The page of all units that a file may use, made from the table of dimensions. */
export function quantitiesPage(context: SiteContext): Page {
  return cataloguePage(context, {
    address: addresses.writingKind('quantities'),
    title: quantitiesTitle,
    summary: quantitiesSummary,
    lines: () =>
      Object.values(dimensions).map(({ name, units }) => `${name}: ${Object.keys(units).join(', ')}`),
    families: () => [{ id: 'units', title: 'Units', table: unitTable() }],
  });
}

function unitTable(): Table {
  return tableOf('Units', Object.values(dimensions), [
    { title: 'Quantity', leads: true, cell: ({ name }) => strong(name) },
    { title: 'Units', kind: 'words', cell: ({ units }) => Object.keys(units).join(', ') },
    { title: 'Written', kind: 'words', cell: ({ examples }) => examples.join('; ') },
  ]);
}
