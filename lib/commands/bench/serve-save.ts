import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { LiveNews } from '../../publish/serve/live-page.ts';
import { type Served, serve } from '../../publish/serve/serve.ts';
import { openPageMaker } from '../serve/page-maker.ts';
import { wallClock } from './clocks.ts';
import type { BenchRow } from './timing.ts';
import { inFreshFolder } from './trees.ts';

/** Saves that are timed, after one that warms up. */
const saves = 5;

/** From the save of an edit that leaves the board alone to the new page of its job, as a reader waits for it. */
export async function serveRows(root: string, job: string): Promise<BenchRow[]> {
  return inFreshFolder(root, async (folder) => {
    const served = await serve({
      root: folder,
      maker: openPageMaker(folder),
      built: join(folder, 'dist'),
      say: () => undefined,
    });
    if ('missing' in served) throw new Error(served.missing);
    try {
      const seconds = await secondsOfSaves(served, folder, job);
      return [
        {
          id: 'serve-save',
          what: `from a save that leaves the board alone to the new page of ${job}`,
          value: 1000 * Math.min(...seconds.slice(1)),
          unit: 'ms',
          target: 'under 1000 on a quiet machine',
        },
      ];
    } finally {
      await served.close();
    }
  });
}

async function secondsOfSaves({ url }: Served, folder: string, job: string): Promise<number[]> {
  const file = join(folder, 'content/jobs', `${job}.yaml`);
  const written = await readFile(file, 'utf8');
  const page = `/jobs/${job}/`;
  const abort = new AbortController();
  const listened = await fetch(`${url}changes?address=${encodeURIComponent(page)}`, { signal: abort.signal });
  const news = newsOf(listened);
  let made = await currentAfter(news, '');
  const seconds: number[] = [];
  for (let save = 0; save <= saves; save += 1) {
    const title = `Title of save ${save}`;
    const start = wallClock();
    await writeFile(file, written.replace(/^title: .*$/m, `title: ${title}`));
    made = await currentAfter(news, made);
    const html = await (await fetch(new URL(page, url))).text();
    seconds.push(wallClock() - start);
    if (!html.includes(title)) throw new Error(`The page of ${job} is told to be current, and is not.`);
  }
  abort.abort();
  return seconds;
}

/** Waits until the page is current and another than the one before; gives what it was made as. */
async function currentAfter(news: AsyncGenerator<LiveNews>, before: string): Promise<string> {
  for (;;) {
    const { value, done } = await news.next();
    if (done) throw new Error('The server ended before the page was made.');
    if (!value.isMarked && value.made !== before) return value.made;
  }
}

/** What an open page is told, as it comes. */
async function* newsOf(response: Response): AsyncGenerator<LiveNews> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of response.body ?? []) {
    text += decoder.decode(chunk, { stream: true });
    const events = text.split('\n\n');
    text = events.pop() ?? '';
    for (const event of events) yield JSON.parse(event.slice(event.indexOf('data: ') + 'data: '.length));
  }
}
