/**
 * Keeps a served page at what was saved last: says how it stands, marks its sheets while they are not current, and loads
 * it anew when it was made anew, at the place where the reader is.
 */
(() => {
  const script = document.currentScript;
  const state = document.getElementById('live');
  const said = document.getElementById('live-said');
  const marks = document.getElementById('live-marks');
  if (!(script instanceof HTMLScriptElement) || !state || !said || !marks) return;
  const { address = '', made = '' } = script.dataset;
  const title = document.title;
  const placeKey = `place ${address}`;
  /** The server may be away for so long, as when it is started anew. */
  const awayMs = 3000;

  /** @param {string} html @param {boolean} isMarked */
  const show = (html, isMarked) => {
    if (said.innerHTML !== html) said.innerHTML = html;
    state.hidden = html === '';
    state.classList.toggle('not-current', isMarked);
    marks.setAttribute('media', isMarked ? 'all' : 'not all');
    document.title = isMarked ? `NOT CURRENT: ${title}` : title;
  };
  document.title = state.classList.contains('not-current') ? `NOT CURRENT: ${title}` : title;

  /**
   * Names that things keep from one state of the page to the next: an id; for a row, its subject within its section.
   * @returns {Map<string, HTMLElement>}
   */
  const namedThings = () => {
    /** @type {Map<string, HTMLElement>} */
    const things = new Map();
    for (const thing of document.querySelectorAll('main [id], main [data-of]')) {
      if (!(thing instanceof HTMLElement)) continue;
      const section = thing.closest('section[id]')?.id ?? '';
      const name = thing.id === '' ? `${section} ${thing.dataset.subject}` : `#${thing.id}`;
      if (!things.has(name)) things.set(name, thing);
    }
    return things;
  };

  /** What begins near the head of the window, nearest first, each with how far below the head; and what has the focus. */
  const placeNow = () => {
    const above = [...namedThings()]
      .map(([name, thing]) => ({ name, top: thing.getBoundingClientRect().top }))
      .filter(({ top }) => top < window.innerHeight / 2)
      .sort((a, b) => Math.abs(a.top) - Math.abs(b.top));
    const held = document.activeElement?.closest('main [id], main [data-of]');
    const focus = [...namedThings()].find(([, thing]) => thing === held)?.[0] ?? '';
    return { marks: above.slice(0, 40), focus, scrollY: window.scrollY };
  };

  const loadAnew = () => {
    sessionStorage.setItem(placeKey, JSON.stringify(placeNow()));
    history.scrollRestoration = 'manual';
    location.reload();
  };

  const kept = sessionStorage.getItem(placeKey);
  sessionStorage.removeItem(placeKey);
  if (kept !== null) {
    /** @type {ReturnType<typeof placeNow>} */
    const place = JSON.parse(kept);
    let isHeld = true;
    // Who moves about meanwhile stays there.
    const letGo = () => {
      isHeld = false;
    };
    for (const name of ['wheel', 'touchmove', 'keydown', 'pointerdown'])
      addEventListener(name, letGo, { once: true, passive: true });
    const goBack = () => {
      if (!isHeld) return;
      const things = namedThings();
      const mark = place.marks.find(({ name }) => things.has(name));
      const thing = mark && things.get(mark.name);
      if (thing) window.scrollBy(0, thing.getBoundingClientRect().top - mark.top);
      else window.scrollTo(0, place.scrollY);
    };
    goBack();
    const held = namedThings().get(place.focus);
    const focus = held?.querySelector('button.pin') ?? held;
    if (focus instanceof HTMLElement) focus.focus({ preventScroll: true });
    // Type and drawings that come late move what stands below them. The browser must not make up for it as well meanwhile.
    const { style } = document.documentElement;
    style.overflowAnchor = 'none';
    const isLoaded = new Promise((go) => addEventListener('load', go, { once: true }));
    void isLoaded.then(goBack);
    void document.fonts.ready.then(goBack);
    void Promise.all([isLoaded, document.fonts.ready]).then(() => {
      goBack();
      requestAnimationFrame(() => {
        goBack();
        history.scrollRestoration = 'auto';
        style.overflowAnchor = '';
      });
    });
  }

  /** @type {number | undefined} */
  let away;
  const source = new EventSource(
    `/changes?address=${encodeURIComponent(address)}&made=${encodeURIComponent(made)}`,
  );
  source.addEventListener('standing', (event) => {
    clearTimeout(away);
    /** @type {{ said: string, isMarked: boolean, made: string }} */
    const news = JSON.parse(event.data);
    if (news.made !== made) loadAnew();
    else show(news.said, news.isMarked);
  });
  source.addEventListener('error', () => {
    clearTimeout(away);
    away = setTimeout(() => {
      const line = document.createElement('p');
      line.className = 'live-line';
      const head = document.createElement('strong');
      head.textContent = 'NOT CURRENT';
      line.append(head, ' the server has ended');
      show(line.outerHTML, true);
    }, awayMs);
  });
})();
