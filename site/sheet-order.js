/**
 * Tables first or drawings first, on every sheet and on paper alike, as the reader likes it: kept for all jobs. Without
 * this script tables come first.
 */
(() => {
  const contents = document.getElementById('contents');
  const drawn = [...document.querySelectorAll('.sheet:has(> .drawing)')];
  if (!contents || drawn.length === 0) return;
  const key = 'first on a sheet';
  const recall = () => {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  };
  /** @param {string} order */
  const remember = (order) => {
    try {
      localStorage.setItem(key, order);
    } catch {
      // The choice holds for this page.
    }
  };

  /** What is moved is moved in the page itself: eye, ear and paper get one order. @param {Element} sheet @param {boolean} drawingsFirst */
  const put = (sheet, drawingsFirst) => {
    const drawings = [...sheet.querySelectorAll(':scope > .drawing')];
    const heads = [...sheet.querySelectorAll(':scope > :is(.sheet-line, h2)')];
    const ways = sheet.querySelector(':scope > .sheet-ways');
    if (drawingsFirst) heads.at(-1)?.after(...drawings);
    else if (ways) ways.before(...drawings);
    else sheet.append(...drawings);
  };

  /** @type {Map<string, HTMLButtonElement>} */
  const buttons = new Map();
  let now = 'tables';
  /** @param {string} order */
  const set = (order) => {
    for (const [name, button] of buttons) button.setAttribute('aria-pressed', String(name === order));
    // A frame that is moved loads anew: what stands as it should is let be.
    if (order !== now) for (const sheet of drawn) put(sheet, order === 'drawings');
    now = order;
  };

  const group = document.createElement('div');
  group.className = 'sheet-order';
  group.setAttribute('role', 'group');
  group.setAttribute('aria-label', 'What comes first on a sheet, here and on paper');
  for (const [name, text] of [
    ['tables', 'Tables first'],
    ['drawings', 'Drawings first'],
  ]) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = text ?? '';
    button.addEventListener('click', () => {
      remember(name ?? '');
      const sheet = sheetInSight();
      set(name ?? '');
      sheet?.scrollIntoView();
    });
    buttons.set(name ?? '', button);
    group.append(button);
  }
  contents.append(group);

  /** The sheet that is being read; none at the head of the page. */
  const sheetInSight = () =>
    [...document.querySelectorAll('.sheet[id]')]
      .filter((sheet) => sheet.getBoundingClientRect().top < window.innerHeight / 2)
      .slice(1)
      .at(-1);

  set(recall() === 'drawings' ? 'drawings' : 'tables');
})();
