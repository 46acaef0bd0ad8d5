import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';
import { preparePhoto } from '../../../lib/export/photo/prepare-photo.ts';
import { chunksOf, withExif } from './exif.ts';

/* Read back by sharp for size and colour, and byte by byte by a reader of our tests for what else a file holds. */

/** A picture whose left half is red and whose right half is blue. */
function picture(widthPx: number, heightPx: number): Sharp {
  const half = { width: Math.round(widthPx / 2), height: heightPx, channels: 3 } as const;
  return sharp({
    create: { width: widthPx, height: heightPx, channels: 3, background: '#0000ff' },
  }).composite([{ input: { create: { ...half, background: '#ff0000' } }, left: 0, top: 0 }]);
}

async function prepared(bytes: Uint8Array) {
  const made = await preparePhoto(bytes);
  if ('fault' in made) throw new Error(made.fault);
  return made;
}

/** The colour at a share of width and height. */
async function colourAt(jpeg: Uint8Array, x: number, y: number): Promise<'red' | 'blue' | 'other'> {
  const { data, info } = await sharp(jpeg).raw().toBuffer({ resolveWithObject: true });
  const at = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * info.channels;
  const [red = 0, , blue = 0] = data.subarray(at, at + 3);
  if (red > 200 && blue < 60) return 'red';
  return blue > 200 && red < 60 ? 'blue' : 'other';
}

describe('a photo that is made ready', () => {
  test('has no more of camera and place than a bare JPEG: EXIF with GPS, XMP and comments in, none out', async () => {
    const plain = new Uint8Array(await picture(400, 300).jpeg().toBuffer());
    const told = withExif(plain, { orientation: 1, secret: 'CAMERA-OWNER-ZYX' });
    expect(chunksOf(told)).toContain('APP1');
    expect(Buffer.from(told).includes('CAMERA-OWNER-ZYX')).toBe(true);
    expect((await sharp(told).metadata()).exif).toBeDefined();
    const { jpeg } = await prepared(told);
    expect(chunksOf(jpeg).filter((name) => /^APP(?!0)|^COM/.test(name))).toEqual([]);
    for (const word of ['CAMERA-OWNER-ZYX', 'Exif', 'http://ns.adobe.com'])
      expect(Buffer.from(jpeg).includes(word)).toBe(false);
    const { exif, icc, xmp, iptc } = await sharp(jpeg).metadata();
    expect({ exif, icc, xmp, iptc }).toEqual({});
  });

  test('stands upright as its camera noted it', async () => {
    // Orientation 6 of EXIF 2.3: the picture is shown turned a quarter to the right.
    const turned = withExif(new Uint8Array(await picture(400, 200).jpeg().toBuffer()), { orientation: 6 });
    const { jpeg, widthPx, heightPx } = await prepared(turned);
    expect([widthPx, heightPx]).toEqual([200, 400]);
    expect(await colourAt(jpeg, 0.5, 0.2)).toBe('red');
    expect(await colourAt(jpeg, 0.5, 0.8)).toBe('blue');
  });

  test.each([
    [1600, 1200, 1600, 1200],
    [1601, 1200, 1600, 1199],
    [3200, 2400, 1600, 1200],
    [900, 3200, 450, 1600],
    [40, 30, 40, 30],
  ])('of %d x %d is %d x %d: smaller, never larger', async (width, height, ...size) => {
    const { widthPx, heightPx } = await prepared(await picture(width, height).jpeg().toBuffer());
    expect([widthPx, heightPx]).toEqual(size);
  });

  test('comes from PNG and WebP as well, what is clear in them on white', async () => {
    const clear = sharp({
      create: { width: 60, height: 40, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
    });
    for (const bytes of [await clear.clone().png().toBuffer(), await clear.clone().webp().toBuffer()]) {
      const { data } = await sharp((await prepared(bytes)).jpeg)
        .raw()
        .toBuffer({ resolveWithObject: true });
      expect([...data.subarray(0, 3)]).toEqual([255, 255, 255]);
    }
  });
});

describe('what is refused', () => {
  const twice = async (): Promise<Buffer> => {
    const frame = await picture(20, 20).png().toBuffer();
    return sharp([frame, await picture(20, 20).negate().png().toBuffer()], { join: { animated: true } })
      .webp()
      .toBuffer();
  };
  test.each([
    ['a text', async () => Buffer.from('no picture at all'), /no picture/],
    ['an empty file', async () => Buffer.alloc(0), /no picture/],
    [
      'half a picture',
      async () => (await picture(400, 300).jpeg().toBuffer()).subarray(0, 900),
      /no picture/,
    ],
    [
      'SVG',
      async () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'),
      /is svg/,
    ],
    ['GIF', async () => picture(20, 20).gif().toBuffer(), /is gif/],
    ['one that moves', twice, /moves/],
    ['CMYK', async () => picture(40, 30).toColourspace('cmyk').jpeg().toBuffer(), /CMYK/],
    [
      'more than a hundred million points',
      async () =>
        sharp({ create: { width: 10_001, height: 10_000, channels: 3, background: '#fff' } })
          .png({ compressionLevel: 1 })
          .toBuffer(),
      /million points/,
    ],
  ])('%s', async (_, bytes, says) => {
    const made = await preparePhoto(await bytes());
    expect('fault' in made ? made.fault : 'taken').toMatch(says);
  });
});
