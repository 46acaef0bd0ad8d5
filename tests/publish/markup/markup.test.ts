import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { EmptyFolder } from '../../commands/shop-folder.ts';
import { markedShop, markup } from './marked-shop.ts';

/* Every text of a shop that may say anything says markup, by the schema. No page and no drawing takes it for its own. */

/** Texts that are names of something: one that is not known is refused by name, whatever stands in it. */
const names = [
  /^amplifier\/(?:channels|bridges)\//,
  /^distribution\/fused-ways\/\*\/from$/,
  /^fixing\/thread$/,
  /^job\/boards\/\*\/fixings\/\*\/point$/,
  /^job\/devices\/\*\/(?:mix|settings|after-commissioning|after)\//,
  /^job\/links\/\*\/conductors\[\]$/,
  /^job\/photos\/\*\/(?:file|step)$/,
  /^part\/controls\/\*\/(?:automatic|channels|positions)\[\]$/,
  /^part\/controls\/\*\/(?:safe|final)$/,
  /^speaker\/coils\/\*\/(?:positive|negative)$/,
];
const marked = markedShop(['wired', 'board'], (field) => names.some((name) => name.test(field)));

const guide = `---
title: '${markup.replaceAll("'", "''")}'
summary: '${markup.replaceAll("'", "''")}'
---

## ${markup}

Text ${markup}, \`code ${markup}\`, [${markup}](../../findings/index.html '${markup}') and <script>zyx()</script>.

| ${markup} | b |
|---|---|
| a | ${markup} |

\`\`\`yaml ${markup}
${markup}
\`\`\`
`;

const shop = new EmptyFolder();
afterAll(() => shop.remove());

/** Files below a folder of the shop whose name ends so, by their path. */
function filesEnding(folder: string, end: RegExp): readonly (readonly [path: string, text: string])[] {
  return readdirSync(join(shop.root, folder), { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && end.test(one.name))
    .map((one) => join(one.parentPath, one.name))
    .map((path) => [path.slice(shop.root.length + 1), readFileSync(path, 'utf8')]);
}

/** What a page or a drawing has of the markup as its own: an element, an attribute, or its text as it was written. */
function taken([path, text]: readonly [path: string, text: string]): string[] {
  // What a script holds is no markup: it only must not end its element.
  const outside = text.replace(/(<script\b[^>]*>)[\s\S]*?(<\/script>)/g, '$1$2');
  const written = [...outside.matchAll(/.{0,60}(?:<\/?zyx|zyx q=["'(]|<script>zyx).{0,20}/gs)].map(
    ([found]) => `${path}: ${found}`,
  );
  const { document } = parseHTML(text);
  const elements = [...document.querySelectorAll('zyx, [q]')].map(
    (one) => `${path}: ${one.outerHTML.slice(0, 80)}`,
  );
  return [...written, ...elements];
}

beforeAll(async () => {
  for (const { path, text } of marked.files) shop.write(path, text);
  shop.write('content/guides/marked.md', guide);
  const jpeg = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#225588' } })
    .jpeg()
    .toBuffer();
  mkdirSync(join(shop.root, 'content/jobs/wired'));
  for (const photo of ['first', 'second', 'third'])
    writeFileSync(join(shop.root, `content/jobs/wired/${photo}.jpg`), jpeg);
  const built = await shop.run('build', '--audience', 'shop');
  expect(built.told).not.toMatch(/: error:/);
  expect(built.status).toBeLessThanOrEqual(1);
  for (const job of ['wired', 'board'])
    for (const format of ['svg', 'cut', 'labels', 'template', 'nest', 'csv', 'dxf'])
      await shop.run('export', job, '--format', format);
}, 1_200_000);

describe('markup in every text', () => {
  test('stands in the texts of every kind of file', () => {
    for (const field of [
      'job/title',
      'job/notes[]',
      'job/customer/name',
      'part/title',
      'part/notes',
      'shop/name',
      'vehicle/title',
      'vehicle/cautions[]',
    ])
      expect(marked.fields).toContain(field);
    expect(marked.fields.size).toBeGreaterThan(35);
  });

  test('is shown as text on every page, and is no element of any', () => {
    const pages = filesEnding('.rackleaf/shop/dist', /\.html$/);
    expect(pages.length).toBeGreaterThan(100);
    expect(pages.flatMap(taken)).toEqual([]);
    const shown = pages.filter(([, text]) => text.includes('&lt;zyx'));
    expect(shown.length).toBe(pages.length);
  });

  test('is text in every drawing', () => {
    const drawings = filesEnding('.rackleaf', /\.svg$/);
    expect(drawings.length).toBeGreaterThan(40);
    expect(drawings.flatMap(taken)).toEqual([]);
    expect(drawings.filter(([, text]) => text.includes('&lt;zyx')).length).toBeGreaterThan(5);
  });

  test('is text in what is exported: a template is a page, a table keeps it as it was written', () => {
    const pages = filesEnding('.rackleaf/export', /\.html$/);
    expect(pages.length).toBeGreaterThan(0);
    expect(pages.flatMap(taken)).toEqual([]);
    const tables = filesEnding('.rackleaf/export', /\.csv$/);
    // A quote within a field is doubled (RFC 4180, 2.7).
    const quoted = markup.replaceAll('"', '""');
    expect(tables.filter(([, text]) => text.includes(quoted)).length).toBeGreaterThan(3);
    for (const [path, text] of tables) expect(text.replaceAll(quoted, ''), path).not.toContain('<zyx');
  });
});
