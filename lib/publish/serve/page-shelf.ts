import { createHash } from 'node:crypto';
import type { MadePage } from '../page/page.ts';

/** A page as a build would write it, and what it was made from. */
export interface ShelvedPage extends MadePage {
  /** Digest of the HTML. */
  readonly made: string;
  /** The digest of its files and layouts. */
  readonly key: string;
}

/** Characters of pages that are held at once: those that were not asked for the longest go first. */
const mostCharacters = 128 * 2 ** 20;

/** The pages that were made last, by address. */
export class PageShelf {
  readonly #pages = new Map<string, ShelvedPage>();
  readonly #most: number;
  #characters = 0;

  constructor(most = mostCharacters) {
    this.#most = most;
  }

  get(address: string): ShelvedPage | null {
    const page = this.#pages.get(address);
    if (!page) return null;
    this.#pages.delete(address);
    this.#pages.set(address, page);
    return page;
  }

  put(address: string, { html, files }: MadePage, key: string): void {
    this.#drop(address);
    const made = createHash('sha256').update(html).digest('hex').slice(0, 16);
    const page = { html, files, made, key };
    this.#pages.set(address, page);
    this.#characters += charactersOf(page);
    for (const oldest of this.#pages.keys()) {
      if (this.#characters <= this.#most || oldest === address) break;
      this.#drop(oldest);
    }
  }

  #drop(address: string): void {
    const page = this.#pages.get(address);
    if (page) this.#characters -= charactersOf(page);
    this.#pages.delete(address);
  }
}

function charactersOf({ html, files }: MadePage): number {
  return files.reduce((sum, { text }) => sum + text.length, html.length);
}
