import type { MakeOptions, PageMade, PageMaker, PageWish } from '../../../lib/publish/serve/page-maker.ts';

/** A wish that was made known, to be answered by a test. */
export interface Wished {
  readonly wish: PageWish;
  readonly options: MakeOptions;
  readonly answer: (made: PageMade) => void;
  readonly fail: (error: Error) => void;
}

/** A maker that does nothing of itself: a test answers its wishes, or gives the rule by which they are answered. */
export class FakeMaker implements PageMaker {
  readonly wished: Wished[] = [];
  rule: ((wish: PageWish) => PageMade) | null = null;
  isClosed = false;

  page(wish: PageWish, options: MakeOptions): Promise<PageMade> {
    return new Promise((resolve, reject) => {
      this.wished.push({ wish, options, answer: resolve, fail: reject });
      options.signal.addEventListener('abort', () => reject(options.signal.reason));
      if (this.rule) {
        try {
          resolve(this.rule(wish));
        } catch (error) {
          reject(error);
        }
      }
    });
  }

  async search(): Promise<[]> {
    return [];
  }

  hurry(): void {}

  async close(): Promise<void> {
    this.isClosed = true;
  }

  /** The last wish for an address; a test fails where there is none. */
  last(address: string): Wished {
    const found = this.wished.findLast(({ wish }) => wish.address === address);
    if (!found) throw new Error(`Nobody wished for ${address}.`);
    return found;
  }
}

/** A page with this text. */
export function made(text: string): PageMade {
  const html = `<!doctype html><html><head><title>${text}</title></head><body class="job"><main id="main">${text}</main></body></html>`;
  return { state: 'made', html, files: [], problems: [] };
}

/** What came of files that could not be read. */
export function unread(file: string, message: string, line = 3): PageMade {
  return { state: 'unread', problems: [{ where: { file, line, column: 9, path: '' }, message }] };
}
