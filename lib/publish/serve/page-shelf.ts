import { createHash } from 'node:crypto';

/** A page as a build would write it, and what it was made from. */
export interface ShelvedPage {
  readonly html: string;
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

  put(address: string, html: string, key: string): void {
    this.#drop(address);
    const made = createHash('sha256').update(html).digest('hex').slice(0, 16);
    this.#pages.set(address, { html, made, key });
    this.#characters += html.length;
    for (const oldest of this.#pages.keys()) {
      if (this.#characters <= this.#most || oldest === address) break;
      this.#drop(oldest);
    }
  }

  #drop(address: string): void {
    this.#characters -= this.#pages.get(address)?.html.length ?? 0;
    this.#pages.delete(address);
  }
}
