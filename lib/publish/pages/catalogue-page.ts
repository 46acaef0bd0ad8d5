import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import type { Table } from '../sheets/table.ts';
import { addresses } from '../site/addresses.ts';
import { catalogueRecord } from '../site/search-fields.ts';

/** What a page shows of a catalogue: its entries by family. */
export interface CatalogueBody {
  readonly summary: string;
  readonly families: readonly { readonly id: string; readonly title: string; readonly table: Table }[];
}

/** A catalogue of the code, as a page tells it. */
export interface Catalogue {
  readonly address: string;
  readonly title: string;
  readonly summary: string;
  /** A line for each entry, for search. */
  readonly lines: () => readonly string[];
  readonly families: () => CatalogueBody['families'];
}

/** The page of a catalogue, below the guides. */
export function cataloguePage(context: SiteContext, catalogue: Catalogue): Page {
  const { address, title, summary, lines, families } = catalogue;
  return {
    address,
    template: 'catalogue.njk',
    search: () => catalogueRecord({ title, summary }, lines()),
    model: () => {
      const body: CatalogueBody = { summary, families: families() };
      return { ...chromeOf(context, { address, title, above: [['Guides', addresses.guides]] }), body };
    },
  };
}
