/**
 * Tables for those who listen and for those who use keys. Rows that are laid out as cards lose their sense as a table in
 * some browsers: their roles are said outright. A table wider than its room can be reached and scrolled by keys, has its
 * caption as its name, and says that it scrolls. Without this script every table reads the same to the eye.
 */
(() => {
  /** Roles by the name of the element. @type {Record<string, string>} */
  const roles = {
    TABLE: 'table',
    THEAD: 'rowgroup',
    TBODY: 'rowgroup',
    TR: 'row',
    TD: 'cell',
  };

  /** @param {HTMLTableElement} table */
  const sayRoles = (table) => {
    if (table.hasAttribute('role')) return;
    for (const element of [table, ...table.querySelectorAll('thead, tbody, tr, td')])
      element.setAttribute('role', roles[element.tagName] ?? '');
    for (const head of table.querySelectorAll('th'))
      head.setAttribute('role', head.scope === 'col' ? 'columnheader' : 'rowheader');
  };

  /** @param {Element} wrap */
  const measure = (wrap) => {
    const table = wrap.querySelector('table');
    if (!table) return;
    if (getComputedStyle(table).display === 'block') sayRoles(table);
    const scrolls = wrap.scrollWidth > wrap.clientWidth;
    if (scrolls === wrap.classList.contains('scrolls')) return;
    wrap.classList.toggle('scrolls', scrolls);
    if (scrolls) {
      wrap.setAttribute('role', 'region');
      wrap.setAttribute('aria-label', table.caption?.textContent?.trim() ?? '');
      wrap.setAttribute('tabindex', '0');
    } else for (const name of ['role', 'aria-label', 'tabindex']) wrap.removeAttribute(name);
  };

  const watcher = new ResizeObserver((entries) => {
    for (const { target } of entries) measure(target);
  });
  for (const wrap of document.querySelectorAll('.table-wrap')) watcher.observe(wrap);
})();
