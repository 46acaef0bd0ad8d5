import type { BrowserContext, Page } from 'playwright-core';

type Point = readonly [x: number, y: number];

/** Fingers on a page, as the browser gets them from a screen that is touched. */
export interface Touch {
  readonly start: (...fingers: readonly Point[]) => Promise<void>;
  readonly move: (...fingers: readonly Point[]) => Promise<void>;
  readonly end: () => Promise<void>;
}

/** Touches a page through the browser's own input: what it makes of it, scrolling included, is what a hand would see. */
export async function touchOf(context: BrowserContext, page: Page): Promise<Touch> {
  const session = await context.newCDPSession(page);
  const send = async (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Point[]) => {
    await session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: fingers.map(([x, y], id) => ({ x, y, id })),
    });
  };
  return {
    start: (...fingers) => send('touchStart', fingers),
    move: (...fingers) => send('touchMove', fingers),
    end: () => send('touchEnd', []),
  };
}
