import { digestsIn } from '../page/page-policy.ts';
import type { SiteAsset } from './site-assets.ts';

/**
 * A page with all that it takes from beside it put into it: style, scripts, fonts, icon, photos. It asks for nothing else, and
 * says so: its content security policy allows just the scripts and styles that stand in it, by their digests.
 * Throws where it takes an asset that there is none of.
 */
export async function oneFile(html: string, assets: readonly SiteAsset[]): Promise<string> {
  const textOf = async (href: string): Promise<string> => new TextDecoder().decode(await read(href, assets));
  const withIcon = await replaced(
    html,
    /<link rel="icon" href="([^"]+)" type="([^"]+)">/g,
    async (href, type) => {
      return `<link rel="icon" href="${dataUrl(type, await read(href, assets))}">`;
    },
  );
  const withStyle = await replaced(withIcon, /<link rel="stylesheet" href="([^"]+)">/g, async (href) => {
    return `<style>\n${await withFonts(await textOf(href), assets)}</style>`;
  });
  const withPhotos = await replaced(withStyle, /<img src="([^"]+\.jpg)"/g, async (href) => {
    return `<img src="${dataUrl('image/jpeg', await read(href, assets))}"`;
  });
  const whole = await replaced(withPhotos, /<script src="([^"]+)" defer><\/script>/g, async (href) => {
    // A script that names the end of its own element would end it.
    return `<script>\n${(await textOf(href)).replaceAll('</script', '<\\/script')}</script>`;
  });
  const policy = `<meta http-equiv="Content-Security-Policy" content="${policyOf(whole)}">`;
  return whole.replace('<meta charset="utf-8">', () => `<meta charset="utf-8">\n${policy}`);
}

/** Replaces every match by what a function makes of its groups, one after another. */
async function replaced(
  text: string,
  pattern: RegExp,
  make: (first: string, second: string) => Promise<string>,
): Promise<string> {
  const parts: string[] = [];
  let end = 0;
  for (const match of text.matchAll(pattern)) {
    const [whole, first = '', second = ''] = match;
    parts.push(text.slice(end, match.index), await make(first, second));
    end = match.index + whole.length;
  }
  return [...parts, text.slice(end)].join('');
}

/** The bytes of what a page or a style takes, however many steps up it looks for it. */
function read(href: string, assets: readonly SiteAsset[]): Promise<Uint8Array> {
  const path = href.replace(/^(?:\.{1,2}\/)+/, '');
  const found = assets.find((asset) => asset.path === path);
  if (!found) throw new Error(`There is no asset ${href}.`);
  return found.read();
}

function withFonts(css: string, assets: readonly SiteAsset[]): Promise<string> {
  return replaced(css, /url\("(fonts\/[^"]+\.woff2)"\)/g, async (href) => {
    return `url("${dataUrl('font/woff2', await read(`assets/${href}`, assets))}")`;
  });
}

function dataUrl(type: string, bytes: Uint8Array): string {
  return `data:${type};base64,${Buffer.from(bytes).toString('base64')}`;
}

/** The policy of a page whose scripts and styles all stand in it. */
function policyOf(html: string): string {
  const digests = (pattern: RegExp): string => digestsIn(html, pattern).join(' ');
  return [
    "default-src 'none'",
    `script-src ${digests(/<script>([\s\S]*?)<\/script>/g) || "'none'"}`,
    `style-src ${digests(/<style>([\s\S]*?)<\/style>/g)}`,
    'img-src data:',
    'font-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
