import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withExif } from '../export/photo/exif.ts';
import { type Ran, ShopFolder } from './shop-folder.ts';

/* Pictures of guides from their folder to the site: those that are there, and those that a page would have to ask for elsewhere. */

const shop = new ShopFolder();
afterAll(() => shop.remove());

const guide = `---
title: Setting gain
summary: What to read on the meter.
---
Use a meter.

![The "meter" & its leads](the%20meter.png)
Beside it: ![from a host](https://elsewhere.invalid/a.png), ![written in](data:image/png;base64,AAAA),
![out of the folder](../jobs/demo/front.jpg) and ![not there](nothing.jpg).

See [the job](../../jobs/demo/index.html) and [another host](https://elsewhere.invalid/).
`;

let built: Ran;
beforeAll(async () => {
  const picture = sharp({ create: { width: 64, height: 48, channels: 3, background: '#225588' } });
  mkdirSync(join(shop.root, 'content/guides'), { recursive: true });
  writeFileSync(join(shop.root, 'content/guides/the meter.png'), await picture.clone().png().toBuffer());
  const jpeg = withExif(await picture.jpeg().toBuffer(), { orientation: 1, secret: 'CAMERA-OWNER-ZYX' });
  writeFileSync(join(shop.root, 'content/guides/second.jpg'), jpeg);
  shop.write('content/guides/gain.md', guide);
  shop.write('content/guides/second.md', guide.replace(/!\[[\s\S]*\.\n/, '![Second](second.jpg)\n'));
  built = await shop.run('build');
}, 600_000);

const page = (slug: string): string => shop.read(`dist/guides/${slug}/index.html`);

describe('the pictures of guides', () => {
  test('are files of the site with their words and their size, and hold nothing but the picture', () => {
    const [, path = ''] =
      /<img src="\.\.\/\.\.\/(assets\/photos\/[0-9a-f]{64}\.jpg)" width="64" height="48" alt="The &quot;meter&quot; &amp; its leads" loading="lazy">/.exec(
        page('gain'),
      ) ?? [];
    expect(
      readdirSync(join(shop.root, 'dist/assets/photos')).map((name) => `assets/photos/${name}`),
    ).toContain(path);
    const [, second = ''] =
      /<img src="\.\.\/\.\.\/(assets\/photos\/[0-9a-f]{64}\.jpg)"/.exec(page('second')) ?? [];
    expect(shop.read(join('dist', second))).not.toContain('CAMERA-OWNER-ZYX');
  });

  test('that lie elsewhere are told with their place and left out, with their words in their stead', () => {
    expect(built.status).toBe(2);
    const lines = guide.split('\n');
    for (const [file, says] of [
      ['https://elsewhere.invalid/a.png', 'it lies elsewhere, and no page asks others for anything'],
      ['data:image/png;base64,AAAA', 'it lies elsewhere, and no page asks others for anything'],
      ['../jobs/demo/front.jpg', 'its file is more than a name'],
      ['nothing.jpg', 'there is no such file'],
    ] as const) {
      const line = lines.findIndex((text) => text.includes(file));
      const column = (lines[line]?.indexOf(file) ?? 0) + 1;
      expect(built.told).toContain(
        `content/guides/gain.md:${line + 1}:${column}: error: the picture is left out: ${says}`,
      );
    }
    expect(page('gain')).toContain('Beside it: from a host, written in,');
    expect(page('gain').match(/<img/g)).toHaveLength(1);
    expect(page('gain')).not.toMatch(/src="(?:https?:|data:)/);
  });

  test('come into the site of one job, where a link to what it does not have is plain text', async () => {
    shop.write(
      'content/guides/gain.md',
      guide.replace('](../../jobs/demo/index.html)', '](../../writing/index.html)'),
    );
    const alone = await shop.run('build', '--job', 'demo');
    expect(alone.status).toBe(2);
    const lone = shop.read('.rackleaf/jobs/demo/dist/guides/gain/index.html');
    expect(lone).toContain('<p>See the job and <a href="https://elsewhere.invalid/">another host</a>.</p>');
    expect(lone).toContain('<img src="../../assets/photos/');
    expect(page('gain')).toContain('<a href="../../jobs/demo/index.html">the job</a>');
  });
});

describe('two jobs with one id', () => {
  test('are told by the one whose file is called otherwise, and the rest is built', async () => {
    const other = new ShopFolder();
    other.write('content/jobs/second.yaml', other.read('content/jobs/demo.yaml'));
    const refused = await other.run('build');
    expect(refused.status).toBe(2);
    expect(refused.told).toMatch(
      /content\/jobs\/second\.yaml:2:5: error: .*the job calls itself "demo", but its file is second\.yaml/,
    );
    const kept = await other.run('build', '--keep-going');
    expect(kept.status).toBe(2);
    expect(readdirSync(join(other.root, 'dist/jobs')).toSorted()).toEqual(['demo', 'index.html']);
    other.remove();
  });
});
