/**
 * Drawings that can be brought nearer and moved about: wheel with the control key, two fingers, drag, double
 * click, buttons, keys. The wheel alone goes on through the page. A drawing moves by the scrolling of its frame, so that
 * one finger works without any help. Without this script each drawing stands at its full width.
 */
(() => {
  const most = 12;
  const step = 1.5;
  /** Width at which the lettering of a drawing can be read, and how much a millimetre of a larger sheet needs of it. */
  const readablePx = 704;
  const readablePxPerMm = 2.52;
  /** A hand that clicks may shake by so much. */
  const shakePx = 4;
  /** How far an arrow key moves a drawing. */
  const keyPx = 40;

  /** @param {HTMLElement} figure @param {(text: string) => void} tell */
  const open = (figure, tell) => {
    const frame = figure.querySelector('.drawing-wrap');
    const size = getComputedStyle(figure);
    const widthMm = Number(size.getPropertyValue('--w'));
    const heightMm = Number(size.getPropertyValue('--h'));
    if (!(frame instanceof HTMLElement) || !widthMm || !heightMm) return;
    let zoom = 1;

    /** The zoom at which all of the drawing is in sight. */
    const whole = () => {
      const highest = Number.parseFloat(getComputedStyle(frame).maxHeight) - 2;
      // On paper no frame has a highest.
      return highest > 0 ? Math.min(1, highest / ((frame.clientWidth * heightMm) / widthMm)) : 1;
    };
    /** Zooms so that the point of the drawing below (x, y) of the window stays there. */
    /** @param {number} wanted @param {{ x: number, y: number }} [at] */
    const zoomTo = (wanted, at) => {
      const next = Math.min(most, Math.max(whole(), wanted));
      const box = frame.getBoundingClientRect();
      const x = at ? at.x - box.left : frame.clientWidth / 2;
      const y = at ? at.y - box.top : frame.clientHeight / 2;
      const across = (frame.scrollLeft + x) / zoom;
      const down = (frame.scrollTop + y) / zoom;
      zoom = next;
      // A property, not a width: on paper the drawing keeps its scale.
      figure.style.setProperty('--zoom', String(next));
      frame.scrollLeft = across * next - x;
      frame.scrollTop = down * next - y;
      figure.dataset.zoom = next.toFixed(2);
    };
    /** @param {number} wanted */
    const zoomAndTell = (wanted) => {
      zoomTo(wanted);
      tell(`Zoom ${Math.round(zoom * 100)} %`);
    };
    const showWhole = () => {
      zoomTo(whole());
      frame.scrollIntoView({ block: 'nearest' });
      tell('The whole drawing is in sight.');
    };

    frame.setAttribute('role', 'region');
    frame.setAttribute('aria-label', figure.querySelector('figcaption')?.textContent ?? '');
    frame.tabIndex = 0;
    figure.classList.add('zoomable');
    // What stands among the text is lettered to be read at the width of a phone.
    const widePx = Math.max(readablePx, widthMm * readablePxPerMm);
    zoomTo(figure.classList.contains('inline') ? 1 : widePx / Math.max(1, frame.clientWidth));
    figure.prepend(
      tools(figure, [
        ['Larger', () => zoomAndTell(zoom * step)],
        ['Smaller', () => zoomAndTell(zoom / step)],
        ['Whole', showWhole],
      ]),
    );

    frame.addEventListener('keydown', (event) => {
      if (event.target !== frame || event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.key === '+' || event.key === '=') zoomAndTell(zoom * step);
      else if (event.key === '-') zoomAndTell(zoom / step);
      else if (event.key === '0') showWhole();
      else if (!movedDown(frame, event.key)) return;
      event.preventDefault();
    });
    frame.addEventListener(
      'wheel',
      (event) => {
        if (!event.ctrlKey && !event.metaKey) return;
        event.preventDefault();
        zoomTo(zoom * Math.exp(-event.deltaY / 300), event);
      },
      { passive: false },
    );
    frame.addEventListener('dblclick', (event) => zoomTo(zoom * step, event));
    followFingers(frame, { zoomTo, zoom: () => zoom });
    followMouse(frame);
  };

  /**
   * Moves a drawing up or down by a key: no wheel does, so no browser does it by itself. At its end the key goes on to the
   * page. @param {HTMLElement} frame @param {string} key
   */
  const movedDown = (frame, key) => {
    /** @type {Record<string, number>} */
    const ways = { ArrowDown: keyPx, ArrowUp: -keyPx };
    const before = frame.scrollTop;
    frame.scrollTop += ways[key] ?? 0;
    return frame.scrollTop !== before;
  };

  /** Buttons of a drawing. @param {HTMLElement} figure @param {readonly (readonly [string, () => void])[]} buttons */
  const tools = (figure, buttons) => {
    const bar = document.createElement('div');
    bar.className = 'drawing-tools';
    bar.setAttribute('role', 'group');
    const name = figure.querySelector('figcaption')?.textContent ?? '';
    bar.setAttribute('aria-label', `Zoom of ${name}`);
    for (const [text, press] of buttons) {
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = text;
      button.addEventListener('click', press);
      bar.append(button);
    }
    const hint = document.createElement('small');
    hint.className = 'wheel-hint';
    hint.textContent = 'Ctrl and the wheel bring it nearer, dragging moves it.';
    bar.append(hint);
    return bar;
  };

  /** Two fingers zoom and move; one scrolls the frame, which the browser does by itself. */
  /** @param {HTMLElement} frame @param {{ zoomTo: (wanted: number, at: { x: number, y: number }) => void, zoom: () => number }} view */
  const followFingers = (frame, { zoomTo, zoom }) => {
    /** @type {Map<number, { x: number, y: number }>} */
    const fingers = new Map();
    let apart = 0;
    let zoomAtStart = 1;
    let middle = { x: 0, y: 0 };
    const spread = () => {
      const [a, b] = [...fingers.values()];
      if (!a || !b) return null;
      return { apart: Math.hypot(a.x - b.x, a.y - b.y), middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
    };
    frame.addEventListener('pointerdown', (event) => {
      if (event.pointerType === 'mouse') return;
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      const now = spread();
      if (!now) return;
      apart = now.apart;
      middle = now.middle;
      zoomAtStart = zoom();
    });
    frame.addEventListener('pointermove', (event) => {
      if (!fingers.has(event.pointerId)) return;
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      const now = spread();
      if (!now || apart === 0) return;
      frame.scrollLeft += middle.x - now.middle.x;
      frame.scrollTop += middle.y - now.middle.y;
      middle = now.middle;
      zoomTo((zoomAtStart * now.apart) / apart, middle);
    });
    /** @param {PointerEvent} event */
    const lift = (event) => fingers.delete(event.pointerId);
    frame.addEventListener('pointerup', lift);
    frame.addEventListener('pointercancel', lift);
    frame.addEventListener('pointerleave', lift);
  };

  /** The mouse drags the drawing; the click that ends a drag is no click. @param {HTMLElement} frame */
  const followMouse = (frame) => {
    /** @type {{ x: number, y: number, left: number, top: number } | null} */
    let held = null;
    let dragged = false;
    frame.addEventListener('pointerdown', (event) => {
      if (event.pointerType !== 'mouse' || event.button !== 0) return;
      held = { x: event.clientX, y: event.clientY, left: frame.scrollLeft, top: frame.scrollTop };
      dragged = false;
    });
    frame.addEventListener('pointermove', (event) => {
      if (!held) return;
      const [x, y] = [event.clientX - held.x, event.clientY - held.y];
      if (!dragged && Math.hypot(x, y) < shakePx) return;
      if (!dragged) frame.setPointerCapture(event.pointerId);
      dragged = true;
      frame.scrollLeft = held.left - x;
      frame.scrollTop = held.top - y;
    });
    const letGo = () => {
      held = null;
    };
    frame.addEventListener('pointerup', letGo);
    frame.addEventListener('pointercancel', letGo);
    frame.addEventListener(
      'click',
      (event) => {
        if (dragged) event.stopPropagation();
        dragged = false;
      },
      { capture: true },
    );
  };

  const status = document.getElementById('sheet-status');
  /** @param {string} text */
  const tell = (text) => {
    if (status) status.textContent = text;
  };
  for (const figure of document.querySelectorAll('.drawing'))
    if (figure instanceof HTMLElement) open(figure, tell);
})();
