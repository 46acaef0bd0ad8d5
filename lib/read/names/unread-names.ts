import type { Unread } from '../report.ts';

/** The names whose definitions stand in the files of a shop, but could not be read. */
export class UnreadNames implements Unread {
  readonly #names = new Set<string>();
  readonly #kinds = new Set<string>();

  /** The same names; what is added to the copy stays out of this. */
  copy(): UnreadNames {
    const copy = new UnreadNames();
    for (const name of this.#names) copy.#names.add(name);
    for (const kind of this.#kinds) copy.#kinds.add(kind);
    return copy;
  }

  add(what: string, name: string): void {
    this.#names.add(`${what} ${name}`);
  }

  /** A file of this kind could not be read at all: any name may be defined in it. */
  addAny(what: string): void {
    this.#kinds.add(what);
  }

  /** The names of a kind, and whether any other may be defined as well. */
  of(what: string): { readonly names: readonly string[]; readonly isAny: boolean } {
    const head = `${what} `;
    const names = [...this.#names].flatMap((name) => (name.startsWith(head) ? name.slice(head.length) : []));
    return { names, isAny: this.#kinds.has(what) };
  }

  has(what: string, name: string): boolean {
    return this.#kinds.has(what) || this.#names.has(`${what} ${name}`);
  }
}
