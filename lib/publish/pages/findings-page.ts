import type { Shop } from '../../model/content/shop.ts';
import { type FindingEntry, findingEntry, findingFamilies, isFindingId } from '../../model/findings/index.ts';
import { rulesTold } from '../../model/printed/rule-figures.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { strong, tableOf } from '../sheets/table.ts';
import { addresses } from '../site/addresses.ts';
import { levelOrder, sourceText } from '../words/words.ts';
import { type CatalogueBody, cataloguePage } from './catalogue-page.ts';

export const findingsTitle = 'All findings';
export const findingsSummary =
  'What each finding asks, the levels that it may have, and where it comes from.';

/** The page of all findings, made from the catalogue. */
export function findingsPage(context: SiteContext): Page {
  const { shop } = context.site;
  return cataloguePage(context, {
    address: addresses.findings,
    title: findingsTitle,
    summary: findingsSummary,
    lines: () => allEntries(shop).map(({ id, asks }) => `${id}: ${asks}`),
    families: () => families(shop),
  });
}

type Listed = FindingEntry & { readonly id: string };

/** The entries of a family, with the figures of the shop in what they ask. */
function listed(findings: object, shop: Shop): readonly Listed[] {
  const tell = rulesTold(shop.rules, lengthStyle(shop));
  return Object.keys(findings).flatMap((id): Listed[] => {
    if (!isFindingId(id)) return [];
    const entry = findingEntry(id);
    return [{ ...entry, id, asks: tell(entry.asks) }];
  });
}

const allEntries = (shop: Shop): readonly Listed[] =>
  Object.values(findingFamilies).flatMap(({ findings }) => listed(findings, shop));

function families(shop: Shop): CatalogueBody['families'] {
  return Object.entries(findingFamilies).map(([id, { title, findings }]) => ({
    id,
    title,
    table: tableOf(title, listed(findings, shop), [
      { title: 'Finding', cell: (one) => strong(one.id) },
      { title: 'What it asks', cell: ({ asks }) => asks },
      {
        title: 'Levels',
        cell: ({ levels }) => levelOrder.filter((level) => levels.includes(level)).join(', '),
      },
      { title: 'Source', cell: sourceText },
    ]),
  }));
}
