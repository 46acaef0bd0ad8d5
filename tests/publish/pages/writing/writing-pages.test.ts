import { load } from 'js-yaml';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { isHouseRuleName } from '../../../../lib/model/house-rules.ts';
import { type KindName, kinds } from '../../../../lib/model/kinds/index.ts';
import { rulesNamed } from '../../../../lib/model/printed/rule-figures.ts';
import { fileSchema } from '../../../../lib/model/short-forms/file-schema.ts';
import { fieldExample } from '../../../../lib/model/writing/field-example.ts';
import { fieldText } from '../../../../lib/model/writing/field-text.ts';
import { insideOf } from '../../../../lib/model/writing/schema-shape.ts';
import { renderPage } from '../../../../lib/publish/page/render-page.ts';
import { fieldSections } from '../../../../lib/publish/pages/writing/field-sections.ts';
import { partText, writtenKinds } from '../../../../lib/publish/pages/writing/file-kinds.ts';
import { ruleSections } from '../../../../lib/publish/pages/writing/house-rules-page.ts';
import { writingPages } from '../../../../lib/publish/pages/writing/writing-pages.ts';
import { openTemplates } from '../../../../lib/publish/site/templates.ts';
import { readContent } from '../../../../lib/read/read-content.ts';
import { sampleSite } from '../../sample/sample-site.ts';

const kindsOfFile = writtenKinds();

/** Every field of a schema with its way, those of house rules too. */
function fieldsOf(schema: z.ZodType, way = ''): { way: string; field: z.ZodType }[] {
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return [...inside.fields].flatMap(([name, field]) => [
        { way: `${way}/${name}`, field },
        ...fieldsOf(field, `${way}/${name}`),
      ]);
    case 'list':
      return fieldsOf(inside.element, `${way}[]`);
    case 'record':
      return fieldsOf(inside.value, `${way}/*`);
    case 'wrapper':
      return fieldsOf(inside.inner, way);
    case 'union':
      return inside.options.flatMap((option) => fieldsOf(option, way));
    default:
      return [];
  }
}

describe.each(kindsOfFile)('the fields of $slug', ({ schema }) => {
  const fields = fieldsOf(schema);
  test('each say what they mean, and name no house rule that is not there', () => {
    expect(fields.length).toBeGreaterThan(1);
    expect(fields.filter(({ field }) => !fieldText(field)?.says).map(({ way }) => way)).toEqual([]);
    const named = fields.flatMap(({ field }) => {
      const { says = '', leftOut = '' } = fieldText(field) ?? {};
      return rulesNamed(`${says} ${leftOut}`).map(({ name }) => name);
    });
    expect(named.filter((name) => !isHouseRuleName(name))).toEqual([]);
  });

  test('each have an example that a file may hold', () => {
    const wrong = fields.flatMap(({ way, field }) => {
      const example = fieldExample(field);
      const read = fileSchema(field).safeParse(example);
      return read.success ? [] : [`${way}: ${JSON.stringify(example)}: ${read.error.issues[0]?.message}`];
    });
    expect(wrong).toEqual([]);
  });

  test('each stand on its page, with an example line that YAML reads as what was meant', () => {
    const rows = fieldSections(schema, { title: 'Fields' }).flatMap((section) => section.rows);
    const anchors = rows.map(({ anchor }) => anchor);
    expect(new Set(anchors).size).toBe(anchors.length);
    for (const { example, name } of rows.filter((row) => row.example !== ''))
      expect(Object.keys(z.record(z.string(), z.unknown()).parse(load(example))), example).toEqual([
        name.split('.').at(-1),
      ]);
  });
});

const isKind = (name: string): name is KindName => Object.hasOwn(kinds, name);
test.each(Object.keys(kinds).filter(isKind))(
  'the whole example of the kind %s is read without an error',
  (kind) => {
    const { problems } = readContent([
      { path: 'content/shop.yaml', text: 'rackleaf: 1\nname: Example Audio\n' },
      { path: 'content/parts/mine.yaml', text: `${partText(kind)}\n` },
    ]);
    expect(problems.map(({ where, message }) => `${where.path}: ${message}`)).toEqual([]);
  },
);

test('every house rule stands on the page of house rules, with a default that the shop file takes', () => {
  const rows = ruleSections('inch').flatMap(({ rows: own }) => own);
  const text = [
    'rackleaf: 1',
    'name: Example Audio',
    'rules:',
    ...rows.map(({ example }) => `  ${example}`),
    '',
  ].join('\n');
  const { problems } = readContent([{ path: 'content/shop.yaml', text }]);
  expect(problems.map(({ message }) => message)).toEqual([]);
  expect(rows.length).toBe(
    fieldSections(kindsOfFile[0]?.schema ?? z.never(), { title: '' })
      .flatMap(({ rows: all }) => all)
      .filter(({ anchor }) => anchor.startsWith('rules.')).length,
  );
});

test('every page is made by its template from what its model has, and stays small', () => {
  const templates = openTemplates({ strict: true });
  const pages = writingPages({ site: sampleSite(), audience: 'bench' });
  expect(pages.length).toBe(kindsOfFile.length + 4);
  for (const page of pages) {
    const html = renderPage(page, templates, () => []);
    expect(html.length, page.address).toBeLessThan(300_000);
    expect(html, page.address).not.toMatch(/\{[a-z][a-z0-9-]*\}|undefined|\[object/);
  }
});
