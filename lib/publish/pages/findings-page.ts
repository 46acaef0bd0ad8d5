import type { Shop } from '../../model/content/shop.ts';
import { type FindingEntry, findingEntry, findingFamilies, isFindingId } from '../../model/findings/index.ts';
import { ruleValues, withRules } from '../../model/printed/rule-figures.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { levelOrder, sourceText } from '../page/words.ts';
import { lengthStyle } from '../page/written.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { addresses } from '../site/addresses.ts';
import { catalogueRecord } from '../site/search-record.ts';

export const findingsTitle = 'All findings';
export const findingsSummary =
  'What each finding asks, the levels that it may have, and where it comes from.';

/** Every finding that a job can have, by family. */
export interface FindingsBody {
  readonly summary: string;
  readonly families: readonly { readonly id: string; readonly title: string; readonly table: Table }[];
}

/** The page of all findings, made from the catalogue. */
export function findingsPage(context: SiteContext): Page {
  const address = addresses.findings;
  return {
    address,
    template: 'catalogue.njk',
    search: () =>
      catalogueRecord(
        { title: findingsTitle, summary: findingsSummary },
        allEntries(context.site.shop).map(({ id, asks }) => `${id}: ${asks}`),
      ),
    model: () => {
      const body: FindingsBody = { summary: findingsSummary, families: families(context.site.shop) };
      return {
        ...chromeOf(context, { address, title: findingsTitle, above: [['Guides', addresses.guides]] }),
        body,
      };
    },
  };
}

type Listed = FindingEntry & { readonly id: string };

/** The entries of a family, with the figures of the shop in what they ask. */
function listed(findings: object, shop: Shop): readonly Listed[] {
  const values = ruleValues(shop.rules);
  const style = lengthStyle(shop);
  return Object.keys(findings).flatMap((id): Listed[] => {
    if (!isFindingId(id)) return [];
    const entry = findingEntry(id);
    return [{ ...entry, id, asks: withRules(entry.asks, values, style) }];
  });
}

const allEntries = (shop: Shop): readonly Listed[] =>
  Object.values(findingFamilies).flatMap(({ findings }) => listed(findings, shop));

function families(shop: Shop): FindingsBody['families'] {
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
