import type { SiteAsset } from '../site-assets.ts';
import { type AssetNames, assetName, nameDigest } from './asset-names.ts';

/** The assets of a site, and what they are called there. */
export interface NamedAssets {
  readonly names: AssetNames;
  readonly files: readonly SiteAsset[];
}

/**
 * Puts the digest of its content into the name of every asset: `assets/styles.0a1b2c3d.css`. What a browser or a host keeps
 * under such a name never changes, so a page never meets the style of another build. Style sheets ask for fonts by name,
 * so fonts are named first.
 */
export async function namedAssets(assets: readonly SiteAsset[]): Promise<NamedAssets> {
  const names: Record<string, string> = {};
  const files: SiteAsset[] = [];
  const isStyle = ({ path }: SiteAsset): boolean => path.endsWith('.css');
  for (const asset of [...assets.filter((one) => !isStyle(one)), ...assets.filter(isStyle)]) {
    const read = await asset.read();
    const content = isStyle(asset) ? withNamedFonts(read, names) : read;
    const path = asset.path.replace(/(\.[a-z0-9]+)$/, `.${nameDigest(content)}$1`);
    names[asset.path] = path;
    files.push({ path, read: async () => content });
  }
  return { names, files };
}

/** A style sheet that asks for its fonts by their names; they lie in a folder beside it. */
function withNamedFonts(style: Uint8Array, names: AssetNames): Uint8Array {
  const folder = 'assets/';
  const text = new TextDecoder().decode(style).replace(/url\("(fonts\/[^"]+)"\)/g, (_, font: string) => {
    return `url("${assetName(names, `${folder}${font}`).slice(folder.length)}")`;
  });
  return new TextEncoder().encode(text);
}
