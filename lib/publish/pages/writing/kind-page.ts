import { rulesTold } from '../../../model/printed/rule-figures.ts';
import { lengthStyle } from '../../../model/quantity/length-text.ts';
import { type GuidePicture, guidePictures } from '../../../model/writing/guide-pictures.ts';
import { once, onceEach } from '../../../plan/once-each.ts';
import { chromeOf } from '../../page/chrome.ts';
import type { Page, SiteContext } from '../../page/page.ts';
import { addresses } from '../../site/addresses.ts';
import { catalogueRecord } from '../../site/search-fields.ts';
import { type FieldRow, type FieldSection, fieldSections } from './field-sections.ts';
import type { WrittenKind } from './file-kinds.ts';

/** What a page of the writing guide shows. */
export interface WritingBody {
  readonly summary: string;
  readonly file: string;
  readonly example: string;
  readonly pictures: readonly { readonly id: GuidePicture; readonly title: string; readonly svg: string }[];
  readonly sections: readonly FieldSection[];
  /** Titles of the columns, for the cards of a narrow screen. */
  readonly columns: readonly { readonly title: string }[];
}

export const writingTitle = 'Writing files';

const columns = ['Field', 'What it means', 'How it is written', 'Left out', 'Seen by'].map((title) => ({
  title,
}));

/** Draws a picture of the guide as SVG text. */
export type DrawPicture = (name: GuidePicture) => string;

/** The fields of a kind follow from its schema alone: no build and no save changes them. */
const fieldsOf = onceEach(
  ({ schema, elsewhere = [] }: WrittenKind) => fieldSections(schema, { title: 'Fields', elsewhere }),
  ({ slug }) => slug,
);

/** The page of one kind of file or part: every field of it, made from its schema. */
export function kindPage(context: SiteContext, kind: WrittenKind, draw: DrawPicture): Page {
  const { slug, title, summary, file, example } = kind;
  return fieldsPage(context, {
    title,
    summary,
    file,
    ...(example && { example }),
    address: addresses.writingKind(slug),
    draw,
    sections: () => fieldsOf(kind),
  });
}

export interface FieldsPage extends Pick<WrittenKind, 'title' | 'summary' | 'file' | 'example'> {
  readonly address: string;
  readonly draw: DrawPicture;
  readonly sections: () => readonly FieldSection[];
}

/** A page of fields, section by section, with the pictures that they point to. */
export function fieldsPage(context: SiteContext, asked: FieldsPage): Page {
  const { address, title, summary, file, example, draw } = asked;
  const { shop } = context.site;
  const sections = once((): readonly FieldSection[] => {
    const tell = rulesTold(shop.rules, lengthStyle(shop));
    return asked.sections().map((one) => told(one, tell));
  });
  return {
    address,
    template: 'writing.njk',
    search: () =>
      catalogueRecord(
        { title, summary },
        sections().flatMap(({ rows }) => rows.map(({ name, says }) => `${name}: ${says}`)),
      ),
    model: () => {
      const shown = sections();
      const body: WritingBody = {
        summary,
        file,
        example: example?.() ?? '',
        columns,
        sections: shown,
        pictures: pictures(shown, draw),
      };
      return { ...chromeOf(context, { address, title, above: [[writingTitle, addresses.writing]] }), body };
    },
  };
}

/** A section with the figures of the shop where a text names a house rule. */
function told(section: FieldSection, tell: (text: string) => string): FieldSection {
  const row = (one: FieldRow): FieldRow => ({ ...one, says: tell(one.says), leftOut: tell(one.leftOut) });
  return { ...section, says: tell(section.says), rows: section.rows.map(row) };
}

/** Each picture that a field points to, once. */
function pictures(sections: readonly FieldSection[], draw: DrawPicture): WritingBody['pictures'] {
  const named = new Set(sections.flatMap(({ rows }) => rows.flatMap(({ picture }) => picture ?? [])));
  return [...named].map((id) => ({ id, title: guidePictures[id], svg: draw(id) }));
}
