import { brotliDecompressSync } from 'node:zlib';

const signature = 0x774f4632;
const headBytes = 48;
const tableCountAt = 12;
const packedSizeAt = 20;
/** Tags that stand for their numbers in the directory: of a font's outlines and where each begins. */
const [glyf, loca] = [10, 11];
const ownTag = 63;

/**
 * A WOFF2 file (W3C, WOFF File Format 2.0) with the same tables stored as they are: the system unpacks them at once,
 * where a reader of fonts in script takes longer for it than for all that it then measures. Throws on any other file.
 */
export function storedWoff2(file: Uint8Array): Uint8Array {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (view.getUint32(0) !== signature) throw new TypeError('a font file of the type is no WOFF2 file');
  const begin = endOfDirectory(file, view.getUint16(tableCountAt));
  const packed = file.subarray(begin, begin + view.getUint32(packedSizeAt));
  const stored = storedBrotli(brotliDecompressSync(packed));
  const whole = new Uint8Array(begin + stored.length);
  whole.set(file.subarray(0, begin));
  whole.set(stored, begin);
  const head = new DataView(whole.buffer);
  head.setUint32(8, whole.length);
  head.setUint32(packedSizeAt, stored.length);
  return whole;
}

/** Where the directory of the tables ends: each entry has a tag, a length and, of a changed table, the changed length. */
function endOfDirectory(file: Uint8Array, tables: number): number {
  let place = headBytes;
  const passNumber = (): void => {
    // Seven bits a byte; the last has the highest bit clear.
    while (((file[place] ?? 0) & 0x80) !== 0) place += 1;
    place += 1;
  };
  for (let nth = 0; nth < tables; nth += 1) {
    const flags = file[place] ?? 0;
    const tag = flags & ownTag;
    const version = flags >>> 6;
    place += tag === ownTag ? 5 : 1;
    passNumber();
    const isChanged = tag === glyf || tag === loca ? version === 0 : version !== 0;
    if (isChanged) passNumber();
  }
  return place;
}

const mostInBlock = 0x10000;

/** Bytes as a Brotli stream of uncompressed blocks (RFC 7932, section 9.2), in a window of 64 kB. */
function storedBrotli(bytes: Uint8Array): Uint8Array {
  const blocks = Math.ceil(bytes.length / mostInBlock);
  const stream = new Uint8Array(bytes.length + 3 * blocks + 1);
  let place = 0;
  for (let from = 0; from < bytes.length; from += mostInBlock) {
    const block = bytes.subarray(from, from + mostInBlock);
    // Not the last block, its length less one in 16 bits, and that it is not compressed; the first bit of all is the window's.
    const head = ((block.length - 1) << 3) | (1 << 19);
    const written = from === 0 ? head << 1 : head;
    stream.set([written & 0xff, (written >>> 8) & 0xff, written >>> 16], place);
    stream.set(block, place + 3);
    place += 3 + block.length;
  }
  // The last block, which is empty.
  stream[place] = 0b11;
  return stream;
}
