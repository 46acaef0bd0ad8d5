import { mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { liveMarks } from '../../../lib/publish/serve/live-page.ts';
import { type NotServed, type Served, serve } from '../../../lib/publish/serve/serve.ts';
import { FakeMaker, made, unread } from './fake-maker.ts';
import { saveWhole } from './whole-save.ts';

let root = '';
let served: Served | null = null;
let maker = new FakeMaker();
const said: string[] = [];

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'rackleaf-serve-'));
  await mkdir(join(root, 'content/jobs'), { recursive: true });
  await save('First title');
  maker = new FakeMaker();
  maker.rule = ({ address, files }) => {
    const text = files.find(({ path }) => path === 'content/jobs/sample-job.yaml')?.text ?? '';
    if (text.startsWith('bad'))
      return unread('content/jobs/sample-job.yaml', 'needs a text, such as "<Board>"');
    return address.includes('nothing') ? { state: 'absent', problems: [] } : made(text);
  };
  said.length = 0;
});
afterEach(async () => {
  await served?.close();
  served = null;
  await rm(root, { recursive: true, force: true });
});

const save = (text: string) => saveWhole(join(root, 'content/jobs/sample-job.yaml'), text);

const open = (port = 0): Promise<Served | NotServed> =>
  serve({ root, maker, built: join(root, 'dist'), port, say: (message) => said.push(message) });

async function start(): Promise<string> {
  const opened = await open();
  if ('missing' in opened) throw new Error(opened.missing);
  served = opened;
  return opened.url;
}

const textAt = async (url: string): Promise<string> => (await fetch(url)).text();

/** The job's page once it holds a text. */
async function pageWith(url: string, text: string): Promise<string> {
  let body = '';
  const read = async () => {
    body = await textAt(`${url}jobs/sample-job/`);
    return body;
  };
  await expect.poll(read).toContain(text);
  return body;
}

/** What an open page is told, one after the other. */
async function listen(url: string, made = ''): Promise<() => Promise<string>> {
  const address = encodeURIComponent('/jobs/sample-job/');
  const reader = (await fetch(`${url}changes?address=${address}&made=${made}`)).body?.getReader();
  return async () => new TextDecoder().decode((await reader?.read())?.value);
}

describe('serve', () => {
  it('gives pages and assets to this machine alone', async () => {
    const url = await start();
    expect(new URL(url).hostname).toBe('127.0.0.1');
    expect(await textAt(`${url}jobs/sample-job/index.html`)).toContain('First title');
    expect(await textAt(`${url}jobs/sample-job`)).toContain('First title');
    expect((await fetch(`${url}assets/styles.css`)).headers.get('content-type')).toContain('text/css');
    expect((await fetch(`${url}assets/live.css`)).status).toBe(200);
    expect((await fetch(`${url}assets/live.js`)).status).toBe(200);
    expect((await fetch(`${url}nothing/`)).status).toBe(404);
    expect((await fetch(`${url}assets/nothing.js`)).status).toBe(404);
    expect((await fetch(`${url}%E0%A4%A`)).status).toBe(200);
  });

  it('adds to a page what it must at marked places, and changes nothing else', async () => {
    const url = await start();
    const body = await pageWith(url, 'First title');
    const pieces = body.split(liveMarks.from);
    const own = pieces.map((piece, index) => (index === 0 ? piece : piece.split(liveMarks.to)[1])).join('');
    const built = made('First title');
    expect(pieces).toHaveLength(4);
    expect(own).toBe(built.state === 'made' ? built.html : '');
  });

  it('shows what was saved, and tells an open page how it stands from one save to the next', async () => {
    const url = await start();
    await pageWith(url, 'First title');
    maker.rule = null;
    const news = await listen(url);
    expect(await news()).toContain('"isMarked":false');
    await save('Second title');
    expect(await news()).toMatch(/planning the latest save.*"isMarked":true/);
    await expect.poll(() => maker.wished.at(-1)?.wish.files[0]?.text).toBe('Second title');
    maker.wished.at(-1)?.answer(made('Second title'));
    expect(await news()).toContain('"isMarked":false');
    expect(await textAt(`${url}jobs/sample-job/`)).toContain('Second title');
  });

  it('keeps the last good page when the input is bad, with the place of the error above it', async () => {
    const url = await start();
    await pageWith(url, 'First title');
    await save('bad');
    const body = await pageWith(url, 'content/jobs/sample-job.yaml:3:9');
    expect(body).toContain('First title');
    expect(body).toContain('NOT CURRENT');
    expect(body).toContain('&lt;Board&gt;');
    expect(said.join('\n')).toContain('content/jobs/sample-job.yaml:3:9: error');
    expect(served?.hasErrors()).toBe(true);
  });

  it('shows the errors alone when there never was a good page', async () => {
    await save('bad');
    const url = await start();
    const response = await fetch(`${url}jobs/sample-job/`);
    expect(response.status).toBe(503);
    expect(await response.text()).toContain('needs a text');
  });

  it('shows the page that was built last while the first plan is made', async () => {
    maker.rule = null;
    await mkdir(join(root, 'dist/jobs/sample-job'), { recursive: true });
    await writeFile(join(root, 'dist/jobs/sample-job/index.html'), htmlOf('Built title'));
    const body = await textAt(`${await start()}jobs/sample-job/`);
    expect(body).toContain('Built title');
    expect(body).toMatch(/NOT CURRENT.*planning the latest save/);
  });

  it('says that the folder went away, on the page and where messages go', async () => {
    const url = await start();
    await pageWith(url, 'First title');
    await rename(join(root, 'content'), join(root, 'away'));
    const body = await pageWith(url, 'content/ is not there');
    expect(body).toContain('First title');
    expect(said.join('\n')).toContain('there is no folder content/');
    await rename(join(root, 'away'), join(root, 'content'));
    await expect.poll(() => served?.hasErrors()).toBe(false);
  });

  it('says that a port is in use, and what to do', async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) => {
      other.listen(0, '127.0.0.1', () => {
        const address = other.address();
        resolve(typeof address === 'object' && address !== null ? address.port : 0);
      });
    });
    const opened = await open(port);
    other.close();
    expect(opened).toHaveProperty('missing', expect.stringMatching(`port ${port} is in use.*--port`));
  });

  it('escapes an address in what it says of it', async () => {
    const body = await textAt(`${await start()}%22%3E%3Cscript%3Ealert(1)%3C%2Fscript%3E-nothing/`);
    expect(body).not.toContain('<script>alert');
  });

  it('closes the maker with the server', async () => {
    await start();
    await served?.close();
    served = null;
    expect(maker.isClosed).toBe(true);
  });
});

function htmlOf(text: string): string {
  const page = made(text);
  return page.state === 'made' ? page.html : '';
}
