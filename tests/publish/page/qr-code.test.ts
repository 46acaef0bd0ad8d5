import { createRequire } from 'node:module';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { qrCode } from '../../../lib/publish/page/qr-code.ts';

type Reader = (data: Uint8ClampedArray, width: number, height: number) => { readonly data: string } | null;

// The package says that it exports a namespace, but what it gives is the function itself.
const loaded: unknown = createRequire(import.meta.url)('jsqr');

function isReader(value: unknown): value is Reader {
  return typeof value === 'function';
}

async function readBack(svg: string): Promise<string | null> {
  if (!isReader(loaded)) throw new Error('jsqr gives no function');
  const standing = svg.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" width="300" height="300" ');
  const { data, info } = await sharp(Buffer.from(standing))
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return loaded(new Uint8ClampedArray(data), info.width, info.height)?.data ?? null;
}

describe('qrCode', () => {
  it.each([
    'https://sheets.example/jobs/estate-side-well/',
    'https://sheets.example/a/long/folder/of/a/shop/jobs/van-three-amps/B_2f_2/',
  ])('is read by jsQR as the address that it was made of: %s', async (address) => {
    expect(await readBack(qrCode(address).drawn)).toBe(address);
  });
});
