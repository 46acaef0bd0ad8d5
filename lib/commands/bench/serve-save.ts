import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { LiveNews } from '../../publish/serve/live-page.ts';
import { type Served, serve } from '../../publish/serve/serve.ts';
import { openPageMaker } from '../serve/page-maker.ts';
import { processClock, wallClock } from './clocks.ts';
import type { BenchRow } from './timing.ts';
import { inFreshFolder } from './trees.ts';

/** Saves that are timed, after two that warm up: as many threads make pages. */
const saves = 5;
const warmSaves = 2;
/** Nothing takes so long but what never comes (ms). */
const longestMs = 280_000;

interface SaveTime {
  readonly wallS: number;
  /** Of the processor, on all threads. */
  readonly workS: number;
}

/** From the save of an edit that leaves the board alone to the new page of its job: as a reader waits, and by the work of the processor. */
export async function serveRows(root: string, job: string): Promise<BenchRow[]> {
  const times = await inFreshFolder(root, async (folder) => {
    const built = join(folder, 'dist');
    const say = (): void => undefined;
    const served = await serve({ root: folder, maker: openPageMaker(folder, say), built, say });
    if ('missing' in served) throw new Error(served.missing);
    try {
      return await timesOfSaves(served, folder, job);
    } finally {
      await served.close();
    }
  });
  const quickest = (of: keyof SaveTime): number => 1000 * Math.min(...times.map((time) => time[of]));
  const waitMs = quickest('wallS');
  const what = `from a save that leaves the board alone to the new page of ${job}`;
  return [
    {
      id: 'serve-save',
      what,
      value: waitMs,
      unit: 'ms',
      goal: { says: 'under 1000 on a quiet machine', met: waitMs < 1000 },
    },
    {
      id: 'serve-save-work',
      what: 'the same by work of the processor',
      value: quickest('workS'),
      unit: 'ms',
    },
  ];
}

async function timesOfSaves({ url }: Served, folder: string, job: string): Promise<SaveTime[]> {
  const file = join(folder, 'content/jobs', `${job}.yaml`);
  const written = await readFile(file, 'utf8');
  const page = `/jobs/${job}/`;
  const signal = AbortSignal.timeout(longestMs);
  const news = newsOf(await fetch(`${url}changes?address=${encodeURIComponent(page)}`, { signal }));
  let made = await currentAfter(news, '');
  const times: SaveTime[] = [];
  for (let save = 0; save < warmSaves + saves; save += 1) {
    const title = `Title of save ${save}`;
    const [wall, work] = [wallClock(), processClock()];
    await writeFile(file, written.replace(/^title: .*$/m, `title: ${title}`));
    made = await currentAfter(news, made);
    const html = await (await fetch(new URL(page, url))).text();
    times.push({ wallS: wallClock() - wall, workS: processClock() - work });
    if (!html.includes(title)) throw new Error(`The page of ${job} is told to be current, and is not.`);
  }
  await news.return(undefined);
  return times.slice(warmSaves);
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
