import { greatestDifferences } from '../../model/computations/greatest-differences.ts';
import { type Computation, computationFamilies } from '../../model/computations/index.ts';
import { type OutsideCheckId, outsideChecks } from '../../model/computations/outside-checks.ts';
import type { Page, SiteContext } from '../page/page.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { addresses } from '../site/addresses.ts';
import { sourceText } from '../words/words.ts';
import { type CatalogueBody, cataloguePage } from './catalogue-page.ts';

export const computationsTitle = 'How numbers are computed';
export const computationsSummary =
  'What is computed, by which formula, from which source, and what outside this tool each number was held against.';

/** The page of all computations, made from their catalogue and from what the checks have found. */
export function computationsPage(context: SiteContext): Page {
  return cataloguePage(context, {
    address: addresses.computations,
    title: computationsTitle,
    summary: computationsSummary,
    lines: () => Object.values(computationFamilies).flatMap(({ computations }) => textsOf(computations)),
    families,
  });
}

const textsOf = (computations: Readonly<Record<string, Computation>>): string[] =>
  Object.entries(computations).map(([id, { computes }]) => `${id}: ${computes}`);

function families(): CatalogueBody['families'] {
  const quantities = Object.entries(computationFamilies).map(([id, { title, computations }]) => ({
    id,
    title,
    table: quantityTable(title, computations),
  }));
  return [...quantities, { id: 'checks', title: 'Checks outside the project', table: checkTable() }];
}

function quantityTable(title: string, computations: Readonly<Record<string, Computation>>): Table {
  return tableOf(title, Object.entries(computations), [
    { title: 'Quantity', cell: ([id]) => strong(id) },
    { title: 'What it is', cell: ([, { computes }]) => computes },
    { title: 'Formula', cell: ([, { formulas }]) => formulas.map(spelt).join('; or ') },
    { title: 'Source', cell: ([, { sources }]) => [...new Set(sources.map(sourceText))].join('; or ') },
    { title: 'Held by', cell: ([, { held }]) => held.map(foundText).join('; ') },
  ]);
}

/** `…` stands for names and figures of the job. */
const spelt = (formula: string): string => (formula === '…' ? 'as its working tells' : formula);

const differenceText = (id: OutsideCheckId): string => `${greatestDifferences[id]} ${outsideChecks[id].unit}`;

const foundText = (id: OutsideCheckId): string => `${id}: ${differenceText(id)}`;

function checkTable(): Table {
  return tableOf('Checks outside the project', checkIds, [
    { title: 'Check', cell: (id) => strong(id) },
    { title: 'What is compared', cell: (id) => outsideChecks[id].compares },
    { title: 'Against', cell: (id) => outsideChecks[id].against },
    { title: 'Greatest difference', cell: differenceText },
  ]);
}

const isCheckId = (id: string): id is OutsideCheckId => Object.hasOwn(outsideChecks, id);
const checkIds: readonly OutsideCheckId[] = Object.keys(outsideChecks).filter(isCheckId);
