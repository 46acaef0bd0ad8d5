import { type Found, lookFor } from '../../lib/publish/search/look-for.ts';
import type { KnownWords } from '../../lib/publish/search/near-words.ts';
import { type Hit, isLibrary, openLibrary, type PageLibrary } from './library.ts';
import { hitElement, statusText } from './shown.ts';

/*
 * The search page: words and filters over an index that lies beside the site. Without this script the page is a plain index
 * of everything; the script puts a form before it and hides the plain index while there is something to search for.
 */

const pageSize = 20;

/** How long a reader stops typing before it is searched, milliseconds. */
const pauseMs = 200;

function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The search page has no ${id}.`);
  return found;
}

/** The form of the page, its parts, and where what was found goes. */
function openPage(root: HTMLElement) {
  const form = root.querySelector('form');
  const words = root.querySelector('input');
  const more = root.querySelector<HTMLButtonElement>('#search-more');
  const details = root.querySelector('details');
  if (!form || !words || !more || !details) throw new Error('The search page has no form.');
  const selects = [...root.querySelectorAll('select')];
  return { root, form, words, more, details, selects, list: element('search-results') };
}
type SearchPage = ReturnType<typeof openPage>;

function chosenOf({ selects }: Pick<SearchPage, 'selects'>): Record<string, string> {
  return Object.fromEntries(
    selects
      .filter((select) => select.value !== '')
      .map((select) => [select.dataset.filter ?? '', select.value]),
  );
}

const { compare } = new Intl.Collator('en', { numeric: true });

function fill(select: HTMLSelectElement, counts: Readonly<Record<string, number>>): void {
  for (const [value, count] of Object.entries(counts).sort(([a], [b]) => compare(a, b)))
    select.append(new Option(`${value} (${count})`, value));
}

function readAddress({ words, selects, details }: SearchPage): void {
  const asked = new URLSearchParams(location.search);
  words.value = asked.get('q') ?? '';
  for (const select of selects) select.value = asked.get(select.name) ?? '';
  details.open = selects.some((select) => select.value !== '');
}

function writeAddress({ words, selects }: SearchPage): void {
  const asked = new URLSearchParams();
  if (words.value.trim() !== '') asked.set('q', words.value.trim());
  for (const select of selects) if (select.value !== '') asked.set(select.name, select.value);
  const text = asked.toString();
  history.replaceState(null, '', text === '' ? location.pathname : `?${text}`);
}

/** Shows what is found, a part at a time; what was asked before is dropped where it comes late. */
class Results {
  readonly #page: SearchPage;
  #found: Found<Hit> | null = null;
  #shown = 0;
  #latest = 0;

  constructor(page: SearchPage) {
    this.#page = page;
  }

  async search(library: PageLibrary, known: KnownWords): Promise<void> {
    this.#latest += 1;
    const run = this.#latest;
    const { words, list } = this.#page;
    const filters = chosenOf(this.#page);
    const asks = words.value.trim() !== '' || Object.keys(filters).length > 0;
    list.setAttribute('aria-busy', 'true');
    const found = asks ? await lookFor(words.value, filters, known, library) : null;
    if (run !== this.#latest) return;
    this.#found = found;
    this.#shown = 0;
    list.replaceChildren();
    element('search-index').hidden = asks;
    element('find-chosen').textContent = Object.values(filters)
      .map((value, nth) => (nth === 0 ? `: ${value}` : `; ${value}`))
      .join('');
    await this.showMore();
    if (run !== this.#latest) return;
    element('search-status').textContent = found ? statusText(found) : '';
    list.removeAttribute('aria-busy');
  }

  async showMore(): Promise<void> {
    const { list, more, root } = this.#page;
    const run = this.#latest;
    const hits = this.#found?.hits ?? [];
    const pages = await Promise.all(hits.slice(this.#shown, this.#shown + pageSize).map((hit) => hit.data()));
    if (run !== this.#latest) return;
    const looked = this.#found?.looked ?? [];
    const entries = pages.map((page) => hitElement(page, looked, root.dataset.top ?? './'));
    list.append(...entries);
    const before = this.#shown;
    this.#shown += entries.length;
    more.hidden = this.#shown >= hits.length;
    if (before > 0) entries[0]?.querySelector('a')?.focus();
  }
}

async function start(root: HTMLElement): Promise<void> {
  const page = openPage(root);
  const bundle = new URL(root.dataset.bundle ?? '', location.href);
  const loaded: unknown = await import(new URL('pagefind.js', bundle).href);
  if (!isLibrary(loaded)) return;
  const library = await openLibrary(loaded);
  const counts: Record<string, number> = await (await fetch(new URL('known-words.json', bundle))).json();
  const known: KnownWords = new Map(Object.entries(counts));
  const filters = await library.filters();
  for (const select of page.selects) fill(select, filters[select.dataset.filter ?? ''] ?? {});
  readAddress(page);
  root.hidden = false;
  element('search-note').hidden = true;
  run(page, library, known);
}

function run(page: SearchPage, library: PageLibrary, known: KnownWords): void {
  const results = new Results(page);
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const now = (): void => {
    clearTimeout(waiting);
    writeAddress(page);
    results.search(library, known).catch(fail);
  };
  page.form.addEventListener('submit', (event) => {
    event.preventDefault();
    now();
  });
  page.words.addEventListener('input', () => {
    clearTimeout(waiting);
    waiting = setTimeout(now, pauseMs);
  });
  for (const select of page.selects) select.addEventListener('change', now);
  page.more.addEventListener('click', () => {
    results.showMore().catch(fail);
  });
  now();
}

/** Where the index can't be had the plain index stays. */
function fail(): void {
  element('search').hidden = true;
  element('search-index').hidden = false;
  element('search-note').hidden = false;
}

const root = document.getElementById('search');
// A page opened from a folder may not load scripts or an index: the plain index stays.
if (root && location.protocol !== 'file:') start(root).catch(fail);
