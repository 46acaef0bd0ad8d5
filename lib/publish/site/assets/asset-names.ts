import { createHash } from 'node:crypto';

/** What each asset is called in a site, by its path without a digest. */
export type AssetNames = Readonly<Record<string, string>>;

/** Assets under their own paths: for what is printed, and for one file that takes them in. */
export const plainNames: AssetNames = {};

/** Digits of a digest in the name of a file. */
const digits = 8;

/** The beginning of the digest of a content, as it stands in the names of files that never change. */
export function nameDigest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex').slice(0, digits);
}

/** What an asset is called: by its digest where the site names it so, by its path otherwise. */
export function assetName(names: AssetNames, path: string): string {
  return names[path] ?? path;
}

const named = new RegExp(`\\.[0-9a-f]{${digits}}(\\.[a-z0-9]+)$`);

/** The path of an asset without the digest in its name. */
export function unnamedPath(path: string): string {
  return path.replace(named, '$1');
}
