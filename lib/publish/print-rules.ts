import type { Shop } from '../model/shop.ts';

/** Running lines of a printed page. */
export interface PrintLines {
  readonly paper: Shop['paper'];
  readonly topLeft: string;
  readonly bottomLeft: string;
  readonly draft: boolean;
  /** Sheets of the page that bear a name of their own at the top right, by their id. */
  readonly sheets?: readonly { readonly id: string; readonly title: string }[];
}

const paperSizes = { letter: 'letter', a4: 'A4' } as const satisfies Record<Shop['paper'], string>;

/** CSS of the printed page: paper, running lines in its margins, the DRAFT mark at the top of every page. */
export function printRules({ paper, topLeft, bottomLeft, draft, sheets = [] }: PrintLines): string {
  const size = paperSizes[paper];
  const general = [
    `size: ${size};`,
    box('top-left', topLeft),
    draft ? box('top-center', 'DRAFT: do not build from this sheet') : '',
    box('bottom-left', bottomLeft),
    '@bottom-right { content: "page " counter(page) " of " counter(pages); }',
  ];
  const named = sheets.map(({ id, title }) => `@page sheet-${id} { ${box('top-right', title)} }`);
  // A drawing that is a sheet of its own brings its margins, frame and title block with it.
  const bare = ['top-left', 'top-center', 'bottom-left', 'bottom-right'].map(
    (place) => `@${place} { content: none; }`,
  );
  const rules = `margin: 0; ${bare.join(' ')}`;
  const whole = `@page whole { size: ${size}; ${rules} }`;
  const lying = `@page whole-lying { size: ${size} landscape; ${rules} }`;
  return [`@page { ${general.filter((rule) => rule !== '').join(' ')} }`, ...named, whole, lying].join('\n');
}

function box(place: string, text: string): string {
  return `@${place} { content: ${cssString(text)}; }`;
}

/** A text as a CSS string that can't end its string, its rule or its style element (CSS Syntax 3). */
export function cssString(text: string): string {
  const escaped = text.replace(
    /["\\<>\p{Cc}]/gu,
    (character) => `\\${(character.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${escaped}"`;
}
