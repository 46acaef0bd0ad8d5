/** What a camera writes into a photo: how it was held, and where. */
export interface CameraData {
  /** 1 to 8 of EXIF 2.3, table 6. */
  readonly orientation: number;
  /** Stands as the owner of the camera. */
  readonly secret?: string;
}

/** A JPEG with an EXIF block behind its head: orientation, an artist, and a GPS directory with a latitude (EXIF 2.3, TIFF 6.0). */
export function withExif(jpeg: Uint8Array, { orientation, secret = 'nobody' }: CameraData): Uint8Array {
  const artist = Buffer.from(`${secret}\0`, 'latin1');
  const entries = 3;
  const head = 8;
  const directory = 2 + entries * 12 + 4;
  const artistAt = head + directory;
  const gpsAt = artistAt + artist.length + (artist.length % 2);
  const gps = 2 + 2 * 12 + 4;
  const latitudeAt = gpsAt + gps;
  const tiff = Buffer.alloc(latitudeAt + 24);
  tiff.write('II', 0, 'latin1');
  tiff.writeUInt16LE(42, 2);
  tiff.writeUInt32LE(head, 4);
  tiff.writeUInt16LE(entries, head);
  const entry = (at: number, tag: number, type: number, count: number, value: number): void => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    if (type === 3) tiff.writeUInt16LE(value, at + 8);
    else tiff.writeUInt32LE(value, at + 8);
  };
  entry(head + 2, 0x0112, 3, 1, orientation);
  entry(head + 14, 0x013b, 2, artist.length, artistAt);
  entry(head + 26, 0x8825, 4, 1, gpsAt);
  artist.copy(tiff, artistAt);
  tiff.writeUInt16LE(2, gpsAt);
  entry(gpsAt + 2, 0x0001, 2, 2, 'N'.charCodeAt(0));
  entry(gpsAt + 14, 0x0002, 5, 3, latitudeAt);
  for (const [at, number] of [51, 1, 30, 1, 0, 1].entries()) tiff.writeUInt32LE(number, latitudeAt + 4 * at);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const block = Buffer.alloc(4);
  block.writeUInt16BE(0xffe1, 0);
  block.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), block, body, jpeg.subarray(2)]);
}

/** The names of the blocks of a JPEG up to its picture (ITU-T T.81, annex B). */
export function chunksOf(jpeg: Uint8Array): string[] {
  const bytes = Buffer.from(jpeg);
  const names: string[] = [];
  for (let at = 2; at + 4 <= bytes.length; at += 2 + bytes.readUInt16BE(at + 2)) {
    const mark = bytes.readUInt16BE(at);
    if (mark >= 0xffe0 && mark <= 0xffef) names.push(`APP${mark - 0xffe0}`);
    else if (mark === 0xfffe) names.push('COM');
    else if (mark === 0xffda) break;
    else names.push(mark.toString(16));
  }
  return names;
}
