/**
 * One thing, wherever it stands: pointing at a wire, a fuse or a part lights it up in every drawing and table
 * of the page; a click pins it, names it and leads from place to place; Escape lets go. By the keyboard: a row's name is
 * a button; the arrow keys go from row to row. Without this script the page reads the same.
 */
(() => {
  const main = document.getElementById('main');
  const status = document.getElementById('sheet-status');
  if (!main || !status) return;

  /** @type {Map<string, Element[]>} */
  const places = new Map();
  /** Takes note of what stands in a part of the page. @param {Element} part */
  const note = (part) => {
    for (const element of part.querySelectorAll('[data-of]')) {
      const subject = element.getAttribute('data-of') ?? '';
      const held = places.get(subject);
      if (held) held.push(element);
      else places.set(subject, [element]);
      element.classList.toggle('lit', subject === lit);
    }
  };
  /** Where a subject stands, in the order of the page. @param {string} subject */
  const placesOf = (subject) =>
    (places.get(subject) ?? [])
      .filter((one) => one.isConnected)
      .sort((a, b) => (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1));

  /** @type {string | null} */
  let lit = null;
  /** @type {string | null} */
  let pinned = null;
  /** Buttons by their subject. @type {Map<string, HTMLButtonElement[]>} */
  const buttons = new Map();
  note(main);

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

  /** What a subject is called on the sheets: as the first row that is about it begins. @param {string} subject */
  const nameOf = (subject) => {
    const rows = placesOf(subject).flatMap((one) => one.querySelector('th[scope=row]')?.textContent ?? []);
    const name = rows
      .map((text) => text.replace(/\s+/g, ' ').trim())
      .find((text) => /[\p{L}\p{N}]/u.test(text));
    return name === undefined || name.includes(subject) ? subject : `${name} (${subject})`;
  };

  const bar = document.createElement('div');
  bar.className = 'pinned';
  bar.setAttribute('role', 'region');
  bar.setAttribute('aria-label', 'Pinned');
  bar.hidden = true;
  const named = document.createElement('p');
  bar.append(named);
  main.append(bar);
  let place = -1;
  /** Brings the next or the last place of what is pinned into sight. @param {number} step */
  const go = (step) => {
    const all = placesOf(pinned ?? '').filter((one) => one.getClientRects().length > 0);
    if (all.length === 0) return;
    place = (place + step + all.length) % all.length;
    all[place]?.scrollIntoView({ block: 'center', inline: 'center' });
  };
  /** @type {readonly (readonly [string, () => void])[]} */
  const ways = [
    ['Place before', () => go(-1)],
    ['Next place', () => go(1)],
    ['Let go', () => pin(null)],
  ];
  for (const [text, press] of ways) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = text;
    button.addEventListener('click', press);
    bar.append(button);
  }

  /** Says what is pinned, and where it is lit. */
  const name = () => {
    bar.hidden = pinned === null;
    if (pinned === null) return;
    const strong = document.createElement('strong');
    strong.textContent = nameOf(pinned);
    named.replaceChildren(strong, ` in ${counted(pinned)}`);
    status.textContent = `${pinned} is lit in ${counted(pinned)}. Escape lets go.`;
  };

  /** @param {string | null} subject */
  const pin = (subject) => {
    for (const button of buttons.get(pinned ?? '') ?? []) button.setAttribute('aria-pressed', 'false');
    const was = pinned;
    pinned = subject;
    place = -1;
    main.classList.toggle('has-pin', subject !== null);
    light(subject);
    for (const button of buttons.get(subject ?? '') ?? []) button.setAttribute('aria-pressed', 'true');
    // It is looked for in every drawing: those that were not near yet come now.
    if (subject !== null) for (const frame of document.querySelectorAll('iframe')) frame.loading = 'eager';
    if (subject === null && was !== null) status.textContent = `${was} let go.`;
    name();
  };
  /** @param {EventTarget | null} target */
  const subjectAt = (target) =>
    target instanceof Element ? (target.closest('[data-of]')?.getAttribute('data-of') ?? null) : null;

  /**
   * Gives each thin line of a drawing a wide one below it that is not seen: nobody hits a hair.
   * @param {Element} drawing
   */
  const widen = (drawing) => {
    // All are looked at before one is put in: after each that is, a browser would reckon the styles of the page anew.
    const lines = [...drawing.querySelectorAll('[data-of] :is(path, line, polyline)')].filter(
      (line) => getComputedStyle(line).fill === 'none',
    );
    for (const line of lines) {
      const reach = line.cloneNode(false);
      if (!(reach instanceof Element)) continue;
      reach.removeAttribute('id');
      reach.setAttribute('class', 'reach');
      line.before(reach);
    }
  };
  for (const drawing of main.querySelectorAll('.drawing')) widen(drawing);
  document.addEventListener('drawn', ({ target }) => {
    if (!(target instanceof Element)) return;
    widen(target);
    note(target);
    name();
  });

  main.addEventListener('pointerover', (event) => {
    if (pinned === null && event.pointerType === 'mouse') light(subjectAt(event.target));
  });
  main.addEventListener('pointerleave', () => {
    if (pinned === null) light(null);
  });
  main.addEventListener('click', (event) => {
    if (event.target instanceof Element && event.target.closest('a, .drawing-tools, .pinned, summary'))
      return;
    const subject = subjectAt(event.target);
    if (subject !== null) pin(subject === pinned ? null : subject);
  });
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && pinned !== null) pin(null);
  });

  /** Turns the name of a row into a button. @param {Element} row */
  const makeButton = (row) => {
    const head = row.querySelector('th');
    const subject = row.getAttribute('data-of') ?? '';
    if (!head) return null;
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'pin';
    button.setAttribute('aria-pressed', 'false');
    button.append(...head.childNodes);
    // A row that has no name of its own, as a conductor without a label, is called after its thing.
    if (!/[\p{L}\p{N}]/u.test(button.textContent ?? '')) {
      const own = document.createElement('span');
      own.className = 'unseen';
      own.textContent = subject;
      button.append(own);
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
    const own = [...table.querySelectorAll('tbody tr[data-of]')].flatMap((row) => makeButton(row) ?? []);
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
