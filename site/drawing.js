/**
 * Stands at the end of a drawing that is a file of its own: hands it to the page of the same site that shows it in a
 * frame. A page that is opened from a folder may not read what is in its frames; what is handed over it may.
 */
(() => {
  const page = window.parent;
  if (page === window) return;
  // Files of a folder are strangers to each other: they have no origin to name.
  const reader = location.protocol === 'file:' ? '*' : location.origin;
  const hand = () => {
    const drawing = new XMLSerializer().serializeToString(document.documentElement);
    page.postMessage({ drawing, isLoaded: document.readyState === 'complete' }, reader);
  };
  addEventListener('message', ({ source }) => {
    if (source === page) hand();
  });
  hand();
})();
