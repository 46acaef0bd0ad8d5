import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { type Ran, type ShopFolder, ShopWithOwnStore } from './shop-folder.ts';

/** Every file below a folder by its path. */
export function filesBelow(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const paths = entries.map(({ parentPath, name }) => join(parentPath, name)).sort();
  return Object.fromEntries(paths.map((path) => [relative(folder, path), readFileSync(path, 'latin1')]));
}

/** What a command said, with no word of the folder that it ran in. */
export function saidIn<T extends Pick<Ran, 'out' | 'told'>>({ root }: ShopFolder, ran: T): T {
  return { ...ran, told: ran.told.replaceAll(root, '/shop') };
}

/** All that a user sees of a shop: what every command says, and the site. */
export async function seen(shop: ShopFolder) {
  const build = saidIn(shop, await shop.run('build'));
  const check = saidIn(shop, await shop.run('check'));
  const plan = saidIn(shop, await shop.run('plan', 'demo', '--json'));
  return { build, check, plan, site: build.status === 2 ? {} : filesBelow(join(shop.root, 'dist')) };
}

/** What is seen of shops in folders where nothing is kept; of the same files it is looked at once. */
export class ColdShops {
  readonly #known = new Map<string, ReturnType<typeof seen>>();

  seen(shop: ShopFolder): ReturnType<typeof seen> {
    const content = filesBelow(join(shop.root, 'content'));
    const files = JSON.stringify(content);
    const known = this.#known.get(files) ?? seenAnew(content);
    this.#known.set(files, known);
    return known;
  }
}

async function seenAnew(content: Readonly<Record<string, string>>): ReturnType<typeof seen> {
  const cold = new ShopWithOwnStore();
  try {
    rmSync(join(cold.root, 'content'), { recursive: true });
    for (const [path, text] of Object.entries(content))
      cold.write(join('content', path), Buffer.from(text, 'latin1').toString());
    return await seen(cold);
  } finally {
    cold.remove();
  }
}
