/**
 * The last visit of a job's page: keeps the sheet that was looked at last in this browser, and offers the way to it to
 * who comes back. Without this script, or where nothing may be kept, the page begins at its head.
 */
(() => {
  const contents = document.getElementById('contents');
  const sheets = [...document.querySelectorAll('.sheet[id]')];
  if (!contents) return;

  const key = `sheet looked at ${location.pathname}`;
  // A browser may keep nothing of a page, as one that is opened from a folder.
  const recall = () => {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  };
  /** @param {string} id */
  const remember = (id) => {
    try {
      localStorage.setItem(key, id);
    } catch {
      // Nothing is lost but the way back.
    }
  };

  const id = recall();
  const last = sheets.find((sheet) => sheet.id === id);
  if (last && last !== sheets[0] && location.hash === '') {
    const line = document.createElement('p');
    line.className = 'last-sheet';
    const link = document.createElement('a');
    link.href = `#${last.id}`;
    link.textContent = last.querySelector('h2')?.textContent?.trim() ?? '';
    line.append('You looked last at ', link, '.');
    document.querySelector('.job-line')?.after(line);
  }

  contents.addEventListener('sheet-reached', (event) => {
    if (event instanceof CustomEvent) remember(event.detail);
  });
})();
