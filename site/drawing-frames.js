/**
 * Drawings are files beside the page, shown in frames that load when they come near. This script puts each drawing in
 * the place of its frame once it has loaded, so that it takes the inks of the page, zooms, and lights up with the tables.
 * Without this script the frames show the same drawings, on paper too.
 */
(() => {
  /** Frames of drawings, those too whose drawing is in the page while they still load. */
  const allFrames = () => [...document.querySelectorAll('iframe')].filter((one) => one.closest('.drawing'));
  /** Frames whose drawing is not in the page yet. */
  const frames = () => allFrames().filter((one) => !one.hidden);

  /** Puts a drawing before its frame, which takes no more room. @param {HTMLIFrameElement} frame @param {string} text */
  const put = (frame, text) => {
    const drawing = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    if (drawing.localName !== 'svg') return;
    for (const script of drawing.querySelectorAll('script')) script.remove();
    frame.before(document.importNode(drawing, true));
    frame.hidden = true;
    frame.closest('.drawing')?.dispatchEvent(new CustomEvent('drawn', { bubbles: true }));
  };

  /** Frames that have loaded all that they asked for. @type {WeakSet<EventTarget>} */
  const loaded = new WeakSet();
  document.addEventListener(
    'load',
    ({ target }) => {
      if (target) loaded.add(target);
    },
    { capture: true },
  );

  addEventListener('message', ({ source, data }) => {
    const frame = allFrames().find(({ contentWindow }) => contentWindow === source);
    if (!frame || typeof data?.drawing !== 'string') return;
    if (!frame.hidden) put(frame, data.drawing);
    // What a frame is still loading would be broken off, and asked for once more by the next.
    if (data.isLoaded || loaded.has(frame)) frame.remove();
    else frame.addEventListener('load', () => frame.remove(), { once: true });
  });
  // One that loaded before this script handed itself over to nobody, or told nobody that it was done.
  for (const frame of frames()) frame.contentWindow?.postMessage('drawing?', '*');

  const isFolder = location.protocol === 'file:';
  /*
   * In a folder all come at once, near or not. Print can't read a file there that no frame has loaded, so all have to be
   * there before it is asked for; and a browser that holds back what comes from a server does not do so with files, which
   * are on their way before any script of the page could stop them. Each is on the same disk, and its frame goes as soon as
   * it has handed the drawing over.
   */
  if (isFolder) for (const frame of frames()) frame.loading = 'eager';

  /** Paper shows every drawing: those that were not near yet are read here and now, since nothing waits for a frame. */
  const putAll = () => {
    for (const frame of isFolder ? [] : frames()) {
      const request = new XMLHttpRequest();
      request.open('GET', frame.src, false);
      try {
        request.send();
      } catch {
        // The site can't be reached.
        break;
      }
      if (request.status !== 200) continue;
      put(frame, request.responseText);
      frame.remove();
    }
    // A sheet that lacks its drawing must not look as if it had none.
    for (const figure of document.querySelectorAll('.drawing'))
      figure.classList.toggle('is-missing', figure.querySelector('iframe:not([hidden])') !== null);
  };
  addEventListener('beforeprint', putAll);
  matchMedia('print').addEventListener('change', ({ matches }) => {
    if (matches) putAll();
  });
})();
