/**
 * The quick view: at a desk and on paper all its parts are open, on a phone one at a time; and its card can be printed
 * alone. Without this script the style sheet opens them where a browser knows how.
 */
(() => {
  const view = document.getElementById('quick-view');
  if (!view) return;
  const parts = [...view.querySelectorAll('details')];
  const wide = matchMedia('(min-width: 48rem)');
  let isPaper = false;

  const set = () => {
    const all = wide.matches || isPaper;
    // Those of one name close each other.
    for (const part of parts) part.name = all ? '' : 'quick';
    parts.forEach((part, index) => {
      part.open = all || index === 0;
    });
  };
  /** @param {boolean} paper */
  const turn = (paper) => {
    isPaper = paper;
    set();
  };
  wide.addEventListener('change', set);
  addEventListener('beforeprint', () => turn(true));
  addEventListener('afterprint', () => turn(false));
  set();

  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'print-card';
  button.textContent = 'Print this card';
  button.addEventListener('click', () => {
    document.body.classList.add('card-alone');
    addEventListener('afterprint', () => document.body.classList.remove('card-alone'), { once: true });
    window.print();
  });
  view.querySelector('.quick')?.append(button);
})();
