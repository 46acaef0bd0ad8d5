/**
 * The search page: words and filters over an index that lies beside the site. Without this script the page
 * is a plain index of everything; the script puts a form before it and hides the plain index while there is
 * something to search for.
 */
(() => {
  /**
   * @typedef {{ url: string, excerpt: string, meta: Record<string, string> }} FoundPage
   * @typedef {{ data: () => Promise<FoundPage> }} Hit
   * @typedef {{ results: Hit[] }} Found
   * @typedef {Record<string, Record<string, number>>} FilterCounts
   * @typedef {{
   *   options: (options: Record<string, unknown>) => Promise<void>,
   *   filters: () => Promise<FilterCounts>,
   *   search: (words: string | null, options: { filters: Record<string, string> }) => Promise<Found>,
   * }} SearchLibrary
   */
  const pageSize = 20;

  /** @param {string} id */
  const element = (id) => {
    const found = document.getElementById(id);
    if (!found) throw new Error(`The search page has no ${id}.`);
    return found;
  };

  /** @param {unknown} loaded @returns {loaded is SearchLibrary} */
  const isLibrary = (loaded) => typeof loaded === 'object' && loaded !== null && 'search' in loaded;

  const root = document.getElementById('search');
  // A page opened from a folder may not load scripts or an index: the plain index stays.
  if (!root || location.protocol === 'file:') return;

  const form = root.querySelector('form');
  const words = root.querySelector('input');
  const selects = [...root.querySelectorAll('select')];
  const status = element('search-status');
  const list = element('search-results');
  const more = element('search-more');
  if (!form || !words) return;

  const top = root.dataset.top ?? './';
  /** @type {Hit[]} */
  let hits = [];
  let shown = 0;
  let latest = 0;

  const chosen = () =>
    Object.fromEntries(
      selects
        .filter((select) => select.value !== '')
        .map((select) => [select.dataset.filter ?? '', select.value]),
    );

  /** @param {HTMLSelectElement} select @param {Record<string, number>} counts */
  const fill = (select, counts) => {
    for (const [value, count] of Object.entries(counts).sort(([a], [b]) => (a < b ? -1 : 1)))
      select.append(new Option(`${value} (${count})`, value));
  };

  const readAddress = () => {
    const asked = new URLSearchParams(location.search);
    words.value = asked.get('q') ?? '';
    for (const select of selects) select.value = asked.get(select.name) ?? '';
  };

  const writeAddress = () => {
    const asked = new URLSearchParams();
    if (words.value.trim() !== '') asked.set('q', words.value.trim());
    for (const select of selects) if (select.value !== '') asked.set(select.name, select.value);
    const text = asked.toString();
    history.replaceState(null, '', text === '' ? location.pathname : `?${text}`);
  };

  /** @param {FoundPage} page */
  const entry = (page) => {
    const item = document.createElement('li');
    const line = document.createElement('p');
    const link = document.createElement('a');
    link.href = `${top}${page.meta.file ?? ''}`;
    link.textContent = page.meta.title ?? '';
    const kind = document.createElement('small');
    kind.textContent = ` ${page.meta.kind ?? ''}. ${page.meta.summary ?? ''}`;
    line.append(link, kind);
    const excerpt = document.createElement('p');
    // The library escapes the text and adds nothing but mark elements.
    excerpt.innerHTML = page.excerpt;
    item.append(line, excerpt);
    return item;
  };

  const showMore = async () => {
    const run = latest;
    const next = hits.slice(shown, shown + pageSize);
    const pages = await Promise.all(next.map((hit) => hit.data()));
    if (run !== latest) return;
    const entries = pages.map(entry);
    list.append(...entries);
    const before = shown;
    shown += entries.length;
    more.hidden = shown >= hits.length;
    if (before > 0) entries[0]?.querySelector('a')?.focus();
  };

  /** @param {SearchLibrary} library */
  const search = async (library) => {
    latest += 1;
    const run = latest;
    const filters = chosen();
    const asks = words.value.trim() !== '' || Object.keys(filters).length > 0;
    const found = asks ? await library.search(words.value.trim() || null, { filters }) : { results: [] };
    if (run !== latest) return;
    hits = found.results;
    shown = 0;
    list.replaceChildren();
    element('search-index').hidden = asks;
    await showMore();
    if (run !== latest) return;
    if (!asks) status.textContent = '';
    else if (hits.length === 0) status.textContent = 'Nothing found. Try fewer words or another filter.';
    else status.textContent = hits.length === 1 ? '1 page found.' : `${hits.length} pages found.`;
  };

  const start = async () => {
    const address = new URL(`${root.dataset.bundle ?? ''}pagefind.js`, location.href).href;
    /** @type {unknown} */
    const loaded = await import(address);
    if (!isLibrary(loaded)) return;
    await loaded.options({ excerptLength: 24 });
    const counts = await loaded.filters();
    for (const select of selects) fill(select, counts[select.dataset.filter ?? ''] ?? {});
    readAddress();
    root.hidden = false;
    element('search-note').hidden = true;

    /** @type {ReturnType<typeof setTimeout> | undefined} */
    let waiting;
    const soon = () => {
      clearTimeout(waiting);
      waiting = setTimeout(now, 200);
    };
    const now = () => {
      clearTimeout(waiting);
      writeAddress();
      search(loaded).catch(fail);
    };
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      now();
    });
    words.addEventListener('input', soon);
    for (const select of selects) select.addEventListener('change', now);
    more.addEventListener('click', () => {
      showMore().catch(fail);
    });
    now();
  };

  const fail = () => {
    root.hidden = true;
    element('search-index').hidden = false;
    element('search-note').hidden = false;
  };

  start().catch(fail);
})();
