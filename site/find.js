/**
 * Search from every page by a key: Control or Command with K goes to the field at the head. Without this script the field
 * is reached by the tab key, and the search page by its link.
 */
(() => {
  const field = document.getElementById('head-find');
  const menu = document.getElementById('site-menu');
  if (!(field instanceof HTMLInputElement) || !menu) return;
  document.addEventListener('keydown', (event) => {
    if (event.key.toLowerCase() !== 'k' || event.altKey || event.shiftKey) return;
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    // On a narrow screen the field is in the menu.
    if (field.getClientRects().length === 0) menu.showPopover();
    field.focus();
    field.select();
  });
})();
