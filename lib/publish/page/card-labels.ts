import { cssString } from './print-rules.ts';

/**
 * The titles of a table's columns as custom properties of its style, one a column counted from 1. On a narrow screen,
 * where each row is a card, `table-cards.css` puts them before the cells: a figure never stands without its name, and the
 * name is written once a table, not once a cell. A colon follows, unless the title ends with a sign of its own.
 */
export function cardProperties(
  columns: readonly { readonly title: string }[],
): readonly (readonly [name: string, value: string])[] {
  return columns.flatMap(({ title }, index) => property(title.trim(), index));
}

/** The same as the text of a style. */
export function cardLabels(columns: readonly { readonly title: string }[]): string {
  return cardProperties(columns)
    .map(([name, value]) => `${name}:${value}`)
    .join(';');
}

/**
 * The same as it stands between the double quotes of an attribute, with nothing in it that HTML would need an entity for:
 * quotes are single, and those within a title are written as CSS escapes.
 */
export function cardStyle(columns: readonly { readonly title: string }[]): string {
  return cardLabels(columns)
    .replaceAll(/['&]/g, (character) => `\\${(character.codePointAt(0) ?? 0).toString(16)} `)
    .replaceAll('"', "'");
}

function property(title: string, index: number): (readonly [string, string])[] {
  if (title === '') return [];
  const label = /[.?:]$/.test(title) ? `${title} ` : `${title}: `;
  return [[`--c${index + 1}`, cssString(label)]];
}
