import { createHash } from 'node:crypto';
import { deserialize, serialize } from 'node:v8';
import { deflateRawSync, inflateRawSync } from 'node:zlib';

/** Begins every entry; changes with the way in which entries are written. */
const magic = Buffer.from('rackleaf kept 1\n');
const digestBytes = 32;

/** A value as it is kept: what it answers to, a digest of all that follows it, and the value packed. */
export function packed(key: string, value: unknown): Buffer {
  const body = Buffer.concat([Buffer.from(key, 'hex'), deflateRawSync(serialize(value), { level: 1 })]);
  return Buffer.concat([magic, digestOf(body), body]);
}

/**
 * The value of an entry, in a box, since null may be a value; null where the bytes are none of this key: of another
 * version, cut short, altered, or another entry under its name.
 */
export function unpacked<T>(key: string, bytes: Buffer): { readonly value: T } | null {
  const body = bytes.subarray(magic.length + digestBytes);
  const digest = bytes.subarray(magic.length, magic.length + digestBytes);
  if (!bytes.subarray(0, magic.length).equals(magic) || !digest.equals(digestOf(body))) return null;
  if (body.subarray(0, digestBytes).toString('hex') !== key) return null;
  try {
    return { value: deserialize(inflateRawSync(body.subarray(digestBytes))) };
  } catch {
    return null;
  }
}

function digestOf(bytes: Buffer): Buffer {
  return createHash('sha256').update(bytes).digest();
}
