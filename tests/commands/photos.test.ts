import { existsSync, mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withExif } from '../export/photo/exif.ts';
import { ShopFolder } from './shop-folder.ts';

/* Photos of a job from its folder to the site: those that can be shown, and those that are refused by name. */

const shop = new ShopFolder();
afterAll(() => shop.remove());

const own = join(shop.root, 'content', 'jobs', 'demo');

beforeAll(async () => {
  mkdirSync(own, { recursive: true });
  const jpeg = await sharp({ create: { width: 64, height: 48, channels: 3, background: '#225588' } })
    .jpeg()
    .toBuffer();
  writeFileSync(join(own, 'front.jpg'), withExif(jpeg, { orientation: 1, secret: 'CAMERA-OWNER-ZYX' }));
  writeFileSync(join(own, 'text.jpg'), 'no picture');
  writeFileSync(join(shop.root, 'outside.jpg'), jpeg);
  symlinkSync(join(shop.root, 'outside.jpg'), join(own, 'link.jpg'));
  const job = shop.read('content/jobs/demo.yaml');
  const photos = [
    '  front: { file: front.jpg, shows: The amplifier in its place, device: amp }',
    '  of-both: { file: front.jpg, shows: The step that a finding asks about, step: battery-off, device: amp }',
    '  escapes: { file: ../../../outside.jpg, shows: Out, device: amp }',
    '  leads-out: { file: link.jpg, shows: Out, device: amp }',
    '  is-text: { file: text.jpg, shows: Text, device: amp }',
    '  is-not-there: { file: nothing.jpg, shows: Nothing, device: amp }',
  ];
  shop.write('content/jobs/demo.yaml', `${job}\nphotos:\n${photos.join('\n')}\n`);
});

describe('a build', () => {
  test('tells each photo that it leaves out with its place, and builds all else', async () => {
    const { status, told } = await shop.run('build');
    expect(status).toBe(2);
    const lineOf = (id: string): number =>
      shop
        .read('content/jobs/demo.yaml')
        .split('\n')
        .findIndex((line) => line.startsWith(`  ${id}:`)) + 1;
    for (const [id, says] of [
      ['escapes', 'its file is more than a name'],
      ['leads-out', 'it leads out of the folder of the job'],
      ['is-text', 'it is no picture that can be opened'],
      ['is-not-there', 'there is no such file'],
    ] as const)
      expect(told).toContain(
        `content/jobs/demo.yaml:${lineOf(id)}:${`  ${id}: { file: `.length + 1}: error: the photo ${id} is left out: ${says}`,
      );
    expect(told).not.toContain('the photo front');
    const page = shop.read('dist/jobs/demo/index.html');
    const [, path = ''] = /src="\.\.\/\.\.\/(assets\/photos\/[0-9a-f]{64}\.jpg)"/.exec(page) ?? [];
    expect(page).toContain('alt="The amplifier in its place"');
    expect(existsSync(join(shop.root, 'dist', path))).toBe(true);
    // What is of two things at once stands behind all steps, as its finding says.
    expect(page.indexOf('The step that a finding asks about')).toBeGreaterThan(
      page.lastIndexOf('class="step-text"'),
    );
    expect(readdirSync(join(shop.root, 'dist', 'assets', 'photos'))).toHaveLength(1);
    expect(shop.read(join('dist', path))).not.toContain('CAMERA-OWNER-ZYX');
  });

  test('keeps what it made by its digest, and makes the same without it', async () => {
    const kept = readdirSync(join(shop.root, '.rackleaf', 'photos'));
    expect(kept).toHaveLength(1);
    const { status } = await shop.run('build');
    expect(status).toBe(2);
    expect(readdirSync(join(shop.root, '.rackleaf', 'photos'))).toEqual(kept);
  });

  test('`check` tells them too', async () => {
    const { told, out } = await shop.run('check', 'demo');
    expect(`${told}${out}`).toContain('the photo is-text is left out');
  });

  test('the PDF of the sheets is made without them, each told once, and ends as a build does', async () => {
    const { status, told } = await shop.run('export', 'demo', '--format', 'pdf', '--to', 'out');
    expect(status).toBe(2);
    expect(told.split('the photo is-text is left out')).toHaveLength(2);
    expect(existsSync(join(shop.root, 'out', 'DRAFT-demo-A-sheets.pdf'))).toBe(true);
  });
});
