/**
 * The contents of a job: marks the sheet that is in sight, leads to the sheets before and after it, and tells of each
 * one that is come to (`sheet-reached`). Without this script the contents list the sheets, and each sheet ends with the
 * ways to its neighbours.
 */
(() => {
  const contents = document.getElementById('contents');
  const here = document.querySelector('.here');
  const before = document.querySelector('.to-before');
  const next = document.querySelector('.to-next');
  const sheets = [...document.querySelectorAll('.sheet[id]')];
  const [first] = sheets;
  if (!contents || !here || !first) return;
  if (!(before instanceof HTMLAnchorElement) || !(next instanceof HTMLAnchorElement)) return;

  const links = new Map(
    [...contents.querySelectorAll('ol a')].map((link) => [link.getAttribute('href'), link]),
  );
  /** @param {Element | undefined} sheet */
  const titleOf = (sheet) => sheet?.querySelector('h2')?.textContent?.trim() ?? '';
  /** The sheet whose head was passed last: what lies below this share of the window is not come to yet. */
  const share = 0.4;

  /** @param {HTMLAnchorElement} link @param {Element | undefined} sheet @param {string} sign @param {string} word */
  const lead = (link, sheet, sign, word) => {
    link.hidden = !sheet;
    if (!sheet) return;
    link.href = `#${sheet.id}`;
    link.textContent = sign;
    link.setAttribute('aria-label', `${word}: ${titleOf(sheet)}`);
    link.title = titleOf(sheet);
  };

  /** @type {Element | null} */
  let current = null;
  /** @param {boolean} isMoved */
  const look = (isMoved) => {
    const line = window.innerHeight * share;
    const atEnd = window.innerHeight + window.scrollY >= document.documentElement.scrollHeight - 2;
    const passed = sheets.filter((sheet) => sheet.getBoundingClientRect().top <= line);
    const sheet = (atEnd && isMoved ? sheets.at(-1) : passed.at(-1)) ?? first;
    if (sheet !== current) show(sheet);
    if (isMoved) contents.dispatchEvent(new CustomEvent('sheet-reached', { detail: sheet.id }));
  };
  /** @param {Element} sheet */
  const show = (sheet) => {
    current = sheet;
    for (const link of links.values()) link.removeAttribute('aria-current');
    const link = links.get(`#${sheet.id}`);
    link?.setAttribute('aria-current', 'true');
    if (link instanceof HTMLElement && contents.scrollHeight > contents.clientHeight)
      contents.scrollTop = link.offsetTop - contents.clientHeight / 2;
    const at = sheets.indexOf(sheet);
    here.textContent = titleOf(sheet);
    here.setAttribute('aria-label', `Contents, now at ${titleOf(sheet)}`);
    lead(before, sheets[at - 1], '‹', 'Sheet before');
    lead(next, sheets[at + 1], '›', 'Next sheet');
  };

  contents.addEventListener('click', ({ target }) => {
    if (target instanceof Element && target.closest('a') && contents.matches(':popover-open'))
      contents.hidePopover();
  });
  let isAsked = false;
  addEventListener(
    'scroll',
    () => {
      if (isAsked) return;
      isAsked = true;
      requestAnimationFrame(() => {
        isAsked = false;
        look(true);
      });
    },
    { passive: true },
  );
  look(location.hash !== '');
})();
