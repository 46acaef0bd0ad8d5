/**
 * One thing, wherever it stands: pointing at a wire, a fuse or a part lights it up in every drawing and table
 * of the page, a click pins it, Escape lets go. By the keyboard: a row's name is a button; the arrow keys go
 * from row to row. Without this script the page reads the same.
 */
(() => {
  const main = document.getElementById('main');
  const status = document.getElementById('sheet-status');
  if (!main || !status) return;

  /** @type {Map<string, Element[]>} */
  const places = new Map();
  for (const element of main.querySelectorAll('[data-subject]')) {
    const subject = element.getAttribute('data-subject') ?? '';
    const held = places.get(subject);
    if (held) held.push(element);
    else places.set(subject, [element]);
  }

  /** @type {string | null} */
  let lit = null;
  /** @type {string | null} */
  let pinned = null;
  /** Buttons by their subject. @type {Map<string, HTMLButtonElement[]>} */
  const buttons = new Map();

  /** @param {string | null} subject */
  const light = (subject) => {
    if (subject === lit) return;
    for (const element of places.get(lit ?? '') ?? []) element.classList.remove('lit');
    for (const element of places.get(subject ?? '') ?? []) element.classList.add('lit');
    lit = subject;
    main.classList.toggle('has-lit', subject !== null);
  };

  /** How many of the page's drawings and tables show a subject. @param {string} subject */
  const counted = (subject) => {
    const all = places.get(subject) ?? [];
    const drawings = new Set(all.flatMap((one) => one.closest('.drawing') ?? []));
    const tables = new Set(all.flatMap((one) => one.closest('table, ul, ol') ?? []));
    /** @param {number} count @param {string} word */
    const words = (count, word) => `${count} ${word}${count === 1 ? '' : 's'}`;
    return `${words(drawings.size, 'drawing')} and ${words(tables.size, 'table')}`;
  };

  /** @param {string | null} subject */
  const pin = (subject) => {
    for (const button of buttons.get(pinned ?? '') ?? []) button.setAttribute('aria-pressed', 'false');
    const was = pinned;
    pinned = subject;
    main.classList.toggle('has-pin', subject !== null);
    light(subject);
    for (const button of buttons.get(subject ?? '') ?? []) button.setAttribute('aria-pressed', 'true');
    if (subject !== null) status.textContent = `${subject} is lit in ${counted(subject)}. Escape lets go.`;
    else if (was !== null) status.textContent = `${was} let go.`;
  };

  /** @param {EventTarget | null} target */
  const subjectAt = (target) =>
    target instanceof Element
      ? (target.closest('[data-subject]')?.getAttribute('data-subject') ?? null)
      : null;

  main.addEventListener('pointerover', (event) => {
    if (pinned === null && event.pointerType === 'mouse') light(subjectAt(event.target));
  });
  main.addEventListener('pointerleave', () => {
    if (pinned === null) light(null);
  });
  main.addEventListener('click', (event) => {
    if (event.target instanceof Element && event.target.closest('a, .drawing-tools')) return;
    const subject = subjectAt(event.target);
    if (subject !== null) pin(subject === pinned ? null : subject);
  });
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && pinned !== null) pin(null);
  });

  /** Turns the name of a row into a button. @param {Element} row */
  const makeButton = (row) => {
    const head = row.querySelector('th');
    const subject = row.getAttribute('data-subject') ?? '';
    if (!head || (places.get(subject)?.length ?? 0) < 2) return null;
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'pin';
    button.setAttribute('aria-pressed', 'false');
    button.append(...head.childNodes);
    // A row that has no name of its own, as a conductor without a label, is called after its thing.
    if (!/[\p{L}\p{N}]/u.test(button.textContent ?? '')) {
      const name = document.createElement('span');
      name.className = 'unseen';
      name.textContent = subject;
      button.append(name);
    }
    head.append(button);
    button.addEventListener('focus', () => {
      if (pinned === null) light(subject);
    });
    button.addEventListener('blur', () => {
      if (pinned === null) light(null);
    });
    const held = buttons.get(subject);
    if (held) held.push(button);
    else buttons.set(subject, [button]);
    return button;
  };

  /** One stop of the tab key a table; the arrow keys go on from there. @param {Element} table */
  const openTable = (table) => {
    const own = [...table.querySelectorAll('tbody tr[data-subject]')].flatMap((row) => makeButton(row) ?? []);
    own.forEach((button, index) => {
      button.tabIndex = index === 0 ? 0 : -1;
    });
    table.addEventListener('keydown', (event) => {
      if (!(event instanceof KeyboardEvent) || !(event.target instanceof HTMLButtonElement)) return;
      const at = own.indexOf(event.target);
      /** @type {Record<string, number>} */
      const goes = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: own.length - 1 };
      const next = own[goes[event.key] ?? -1];
      if (at < 0 || !next) return;
      event.preventDefault();
      for (const button of own) button.tabIndex = button === next ? 0 : -1;
      next.focus();
    });
  };
  for (const table of main.querySelectorAll('.sheet table')) openTable(table);
})();
