import { join } from 'node:path';
import type { PageFile } from '../../page/page.ts';
import { folderOf } from '../addresses.ts';
import { writeSiteFiles } from '../site-assets.ts';

/** Writes the files that stand beside pages. Once it has ended nothing is on its way into the folder, and nothing more is written. */
export class FilesBeside {
  readonly #folder: string;
  readonly #writing = new Set<Promise<void>>();
  #hasEnded = false;

  constructor(folder: string) {
    this.#folder = folder;
  }

  async write(address: string, files: readonly PageFile[]): Promise<void> {
    if (this.#hasEnded) return;
    const writing = writeSiteFiles(
      join(this.#folder, folderOf(address)),
      files.map(({ path, text }) => ({ path, read: async () => new TextEncoder().encode(text) })),
    );
    this.#writing.add(writing);
    await writing.finally(() => this.#writing.delete(writing));
  }

  async end(): Promise<void> {
    this.#hasEnded = true;
    await Promise.allSettled(this.#writing);
  }
}
