/** A photo as it is published: a JPEG of one size, with nothing in it but the picture. */
export interface PreparedPhoto {
  readonly jpeg: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Why a photo is not taken, as a part of a sentence, and what to do. */
export interface PhotoFault {
  readonly fault: string;
  readonly remedy: string;
}

/** The longer side of a published photo: twice what a page is wide, for a fine screen; 220 dots an inch on paper. */
const longSidePx = 1600;
/** JPEG quality at which blocks are not seen beside text (common practice, no source). */
const quality = 80;
/** Bytes of a file that is opened at all: several times what a telephone takes (common practice, no source). */
export const mostBytes = 40 * 2 ** 20;
/** Points of a picture that is opened at all: more would fill the memory of a small machine with one photo. */
export const mostPixels = 100_000_000;
/** What of this makes another picture of the same file: a part of the digest that it is kept by. */
export const photoForm = `jpeg ${longSidePx} ${quality} 1`;

const formats: readonly string[] = ['jpeg', 'png', 'webp'];
const another = 'save it as JPEG in RGB, and name that';

/**
 * Makes a photo ready: turned upright as its camera noted it, at most 1,600 points on its longer side, in sRGB, as JPEG
 * without any data of camera or place (EXIF, XMP, IPTC, profiles). What is no photo is told; where the package that reads
 * pictures is missing, that is told.
 */
export async function preparePhoto(bytes: Uint8Array): Promise<PreparedPhoto | PhotoFault> {
  const open = await opener();
  if (!open)
    return { fault: 'needs the package sharp, which is not installed', remedy: 'run npm install sharp' };
  try {
    const { format = '', space = '', pages = 1, width, height } = await open(bytes).metadata();
    const fault = faultOf(format, space, pages, width * height);
    if (fault) return fault;
    const { data, info } = await open(bytes)
      .autoOrient()
      .flatten({ background: '#ffffff' })
      .resize({ width: longSidePx, height: longSidePx, fit: 'inside', withoutEnlargement: true })
      .toColourspace('srgb')
      .jpeg({ quality })
      .toBuffer({ resolveWithObject: true });
    return { jpeg: data, widthPx: info.width, heightPx: info.height };
  } catch {
    return {
      fault: 'is no picture that can be opened',
      remedy: 'look whether it opens elsewhere, or take another',
    };
  }
}

function faultOf(format: string, space: string, pages: number, pixels: number): PhotoFault | null {
  if (!formats.includes(format)) return { fault: `is ${format || 'no picture'}`, remedy: another };
  if (pages > 1) return { fault: `moves: it has ${pages} pictures`, remedy: 'name one picture of it' };
  if (space === 'cmyk') return { fault: 'is in the colours of a press (CMYK)', remedy: another };
  if (pixels > mostPixels)
    return { fault: `has more than ${mostPixels / 1e6} million points`, remedy: 'make it smaller' };
  return null;
}

/** Opens pictures by sharp; null where that is not installed. Its own bound is put above ours, which says more. */
async function opener() {
  const sharp = await import('sharp').then(
    (module) => module.default,
    () => null,
  );
  return (
    sharp && ((bytes: Uint8Array) => sharp(bytes, { limitInputPixels: 4 * mostPixels, failOn: 'error' }))
  );
}

/** Width and height of a photo that was made ready before; null where it is none. */
export async function photoSize(
  jpeg: Uint8Array,
): Promise<Pick<PreparedPhoto, 'widthPx' | 'heightPx'> | null> {
  const open = await opener();
  const read = await open?.(jpeg)
    .metadata()
    .catch(() => null);
  return read ? { widthPx: read.width, heightPx: read.height } : null;
}
