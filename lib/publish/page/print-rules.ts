import type { Shop } from '../../model/content/shop.ts';
import type { SheetMark } from '../../model/plan/sheet-mark.ts';

/** Running lines of a printed page. */
export interface PrintLines {
  readonly paper: Shop['paper'];
  readonly topLeft: string;
  readonly bottomLeft: string;
  readonly mark: SheetMark['word'] | null;
  /** Sheets of the page that bear a name of their own at the top right, by their id. */
  readonly sheets?: readonly PrintSheet[];
}

/** A sheet as the running lines name it. */
export interface PrintSheet {
  readonly id: string;
  readonly title: string;
  /** True for a sheet with a wide right margin to write in. */
  readonly wideMargin: boolean;
}

/** The mark of a page that is not made from what was saved last. */
export const notCurrent = 'NOT CURRENT';

const paperSizes = { letter: 'letter', a4: 'A4' } as const satisfies Record<Shop['paper'], string>;

/** Pages of drawings on larger sheets, upright and lying: those of any shop, since a frozen plan keeps the sheet that it was drawn on. */
const largerPages = [
  { name: 'whole-tabloid', size: '11in 17in' },
  { name: 'whole-tabloid-lying', size: '17in 11in' },
  { name: 'whole-a3', size: 'A3' },
  { name: 'whole-a3-lying', size: 'A3 landscape' },
] as const;

const pageCount = '@bottom-right { content: "page " counter(page) " of " counter(pages); }';

/** The filing edge says the mark in large type: it stands beside the text, never across it. */
function markedEdge(mark: SheetMark['word'] | typeof notCurrent): string {
  const spacingMm = mark === 'DRAFT' ? 14 : 6;
  return `@left-middle { content: "${mark}"; writing-mode: vertical-rl; font-size: 34pt; font-weight: 600; letter-spacing: ${spacingMm}mm; }`;
}

/**
 * CSS of the printed page: paper, running lines in its margins, the mark of a draft or of a superseded revision at the head and along the
 * filing edge of every page. Pages are counted through the whole set, drawings among them.
 */
export function printRules({ paper, topLeft, bottomLeft, mark, sheets = [] }: PrintLines): string {
  const size = paperSizes[paper];
  const general = [
    `size: ${size};`,
    box('top-left', topLeft),
    mark ? box('top-center', `${mark}: do not build from this sheet`, 'font-weight: 600;') : '',
    mark ? markedEdge(mark) : '',
    box('bottom-left', bottomLeft),
    pageCount,
  ];
  const named = sheets.map(({ id, title, wideMargin }) => {
    const margin = wideMargin ? 'margin-right: 32mm; ' : '';
    return `@page sheet-${id} { ${margin}${box('top-right', title)} }`;
  });
  return [
    `@page { ${general.filter((rule) => rule !== '').join(' ')} }`,
    ...named,
    wholePage('whole', size),
    wholePage('whole-lying', `${size} landscape`),
    ...largerPages.map(({ name, size: larger }) => wholePage(name, larger)),
  ].join('\n');
}

/**
 * A drawing that is a sheet of its own brings its margins, frame and title block with it. Only the count of
 * pages is printed on it, below its frame.
 */
function wholePage(name: string, size: string): string {
  const bare = ['top-left', 'top-center', 'bottom-left', 'left-middle'].map(
    (place) => `@${place} { content: none; }`,
  );
  const count = pageCount.replace(
    ' }',
    ' padding-right: 10mm; padding-bottom: 4.5mm; vertical-align: bottom; }',
  );
  return `@page ${name} { size: ${size}; margin: 0 0 9mm; ${bare.join(' ')} ${count} }`;
}

/**
 * Rules that mark every printed page as not made from the latest save, put behind those of the page itself. The mark of a
 * draft keeps its place at the head; a drawing that is a sheet of its own bears the mark below its frame.
 */
export const notCurrentRules = [
  `@page { ${box('top-left', `${notCurrent}: do not build from this sheet`, 'font-weight: 600;')} ${markedEdge(notCurrent)} }`,
  ...['whole', 'whole-lying', ...largerPages.map(({ name }) => name)].map(
    (name) =>
      `@page ${name} { ${box('bottom-left', `${notCurrent}: do not build from this sheet`, 'padding-left: 20mm; padding-bottom: 4.5mm; vertical-align: bottom; font-weight: 600;')} }`,
  ),
].join('\n');

function box(place: string, text: string, more = ''): string {
  return `@${place} { content: ${cssString(text)};${more === '' ? '' : ` ${more}`} }`;
}

/** A text as a CSS string that can't end its string, its rule or its style element (CSS Syntax 3). */
export function cssString(text: string): string {
  const escaped = text.replace(
    /["\\<>\p{Cc}]/gu,
    (character) => `\\${(character.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${escaped}"`;
}
