import { type FindingEntry, findingEntry, findingFamilies, isFindingId } from '../../model/findings/index.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { levelOrder, sourceText } from '../page/words.ts';
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
        allEntries().map(({ id, asks }) => `${id}: ${asks}`),
      ),
    model: () => {
      const body: FindingsBody = { summary: findingsSummary, families: families() };
      return {
        ...chromeOf(context, { address, title: findingsTitle, above: [['Guides', addresses.guides]] }),
        body,
      };
    },
  };
}

type Listed = FindingEntry & { readonly id: string };

function listed(findings: object): readonly Listed[] {
  return Object.keys(findings).flatMap((id) => (isFindingId(id) ? [{ id, ...findingEntry(id) }] : []));
}

const allEntries = (): readonly Listed[] =>
  Object.values(findingFamilies).flatMap(({ findings }) => listed(findings));

function families(): FindingsBody['families'] {
  return Object.entries(findingFamilies).map(([id, { title, findings }]) => ({
    id,
    title,
    table: tableOf(title, listed(findings), [
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
