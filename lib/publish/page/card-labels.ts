import { cssString } from './print-rules.ts';

/**
 * The titles of a table's columns as custom properties of its style, one a column counted from 1. On a narrow screen,
 * where each row is a card, `cards.css` puts them before the cells: a figure never stands without its name, and the
 * name is written once a table, not once a cell.
 */
export function cardLabels(columns: readonly { readonly title: string }[]): string {
  return columns
    .flatMap(({ title }, index) => (title === '' ? [] : [`--c${index + 1}:${cssString(title.trimEnd())}`]))
    .join(';');
}
