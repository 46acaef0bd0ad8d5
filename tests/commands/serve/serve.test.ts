import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { serve } from '../../../lib/commands/serve.ts';
import { liveMarks } from '../../../lib/publish/serve/live-page.ts';
import { filesBelow } from '../../../lib/publish/site/site-digest.ts';
import { startCompiled } from '../../compiled/compiled-code.ts';
import { withBoard } from '../../read/problem-case.ts';
import { serveFolder } from '../../static-server.ts';
import { misspelt, ShopFolder } from '../shop-folder.ts';

const shop = new ShopFolder();
beforeAll(startCompiled);
afterAll(() => shop.remove());

interface Running {
  readonly url: string;
  readonly told: readonly string[];
  /** What the page of the job was answered with as soon as its address was told: no thread can have made it. */
  readonly first: Response;
  readonly end: () => Promise<number>;
}

/** `rackleaf serve` in the folder of the shop, until it is ended. */
async function running({ root } = shop): Promise<Running> {
  const told: string[] = [];
  let status: Promise<number> = Promise.resolve(0);
  let stop: () => void = () => undefined;
  const stopped = new Promise<void>((resolve) => {
    stop = resolve;
  });
  const begun = new Promise<{ url: string; first: Promise<Response> }>((resolve) => {
    const tell = (text: string): void => {
      told.push(text);
      const [url] = /http:\S+(?=;)/.exec(text) ?? [];
      if (url !== undefined) resolve({ url, first: fetch(`${url}jobs/demo/`) });
    };
    status = serve({ ...realEffects(root), watched: false, tell }, 0, stopped);
  });
  const { url, first } = await begun;
  return {
    url,
    told,
    first: await first,
    end: () => {
      stop();
      return status;
    },
  };
}

/** A served page without what serving adds. */
function bare(html: string): string {
  return html
    .split(liveMarks.from)
    .map((piece, index) => (index === 0 ? piece : (piece.split(liveMarks.to)[1] ?? '')))
    .join('');
}

async function current(url: string): Promise<string> {
  let body = '';
  const read = async () => {
    body = await (await fetch(url)).text();
    return /id="live" class="live"/.test(body);
  };
  await expect.poll(read, { interval: 100 }).toBe(true);
  return body;
}

/** One server of one shop, whose threads load the code and make the site once: each test goes on from the one before. */
describe('rackleaf serve', () => {
  const built = join(shop.root, 'dist');
  let server: Running;
  beforeAll(async () => {
    expect((await shop.run('release', 'demo')).status).toBe(0);
    await shop.run('build');
    server = await running();
  });
  // A test that fails leaves no server behind.
  afterAll(() => server?.end());

  it('gives every file of the site that a build writes, byte for byte but for what serving adds', async () => {
    const { url } = server;
    await current(`${url}index.html`);
    const differing: string[] = [];
    const files = await filesBelow(built);
    for (const file of files) {
      const bytes = readFileSync(join(built, file));
      const isPage = file.endsWith('.html');
      const served = isPage
        ? Buffer.from(bare(await current(url + file)))
        : Buffer.from(await (await fetch(url + file)).arrayBuffer());
      if (!served.equals(bytes)) differing.push(file);
    }
    expect(files).toContain('jobs/demo/A/index.html');
    expect(files.length).toBeGreaterThan(40);
    expect(differing).toEqual([]);
    expect((await fetch(`${url}jobs/other/`)).status).toBe(404);
  });

  it('ends work for a save that another took the place of', async () => {
    const { url, told } = server;
    const text = shop.read('content/jobs/demo.yaml');
    // What is released stays as it is: the next revision is a draft.
    const next = text.replace(/^status: .*$/m, 'status: draft').replace(/^revision: .*$/m, 'revision: B');
    for (const title of ['Second', 'Third', 'Last']) {
      shop.write('content/jobs/demo.yaml', next.replace(/^title: .*$/m, `title: ${title}`));
      await new Promise((resolve) => setTimeout(resolve, 150));
    }
    const at = async () => (await fetch(`${url}jobs/demo/`)).text();
    await expect.poll(at).toContain('<h1>Last</h1>');
    expect(await current(`${url}jobs/demo/`)).toContain('<h1>Last</h1>');
    expect(told.join('\n')).not.toContain('could not be made');
  });

  it('renews the schemas of editors with each save', async () => {
    const named = (name: string) => () => {
      try {
        return shop.read('.rackleaf/schemas/jobs/demo.json').includes(`"${name}"`);
      } catch {
        return false;
      }
    };
    expect(named('spare.REM')()).toBe(false);
    shop.change('content/jobs/demo.yaml', '\ncables:\n', '\n  spare: { part: amp-a, in: boot }\ncables:\n');
    await expect.poll(named('spare.REM')).toBe(true);
  });

  it('shows a job that can no longer be read as it was, with the line, and ends with the status of bad input', async () => {
    const { url, told, end } = server;
    shop.change(...misspelt);
    const at = async () => (await fetch(`${url}jobs/demo/`)).text();
    await expect.poll(at).toMatch(/NOT CURRENT.*content\/jobs\/demo\.yaml:\d+:\d+: error/s);
    expect((await fetch(`${url}jobs/demo/`)).status).toBe(200);
    expect(told.join('\n')).toMatch(/content\/jobs\/demo\.yaml:\d+:\d+: error/);
    const list = async () => (await fetch(`${url}jobs/`)).text();
    await expect.poll(list).toContain('Not in the lists below');
    expect(await end()).toBe(2);
    await expect(fetch(url)).rejects.toThrow();
  });

  it('answers while it plans a site that was never built, and ends well where all could be read', async () => {
    shop.change(misspelt[0], misspelt[2], misspelt[1]);
    rmSync(built, { recursive: true });
    const { first, end } = await running();
    expect(first.status).toBe(503);
    expect(await first.text()).toContain('planning the latest save');
    expect(await end()).toBe(0);
  });

  it('ranks past boards anew once a job comes, and once a part draws more', async () => {
    const boards = new ShopFolder();
    onTestFinished(() => boards.remove());
    const job = 'content/jobs/demo.yaml';
    const [, found, board] = withBoard();
    boards.change(job, found, board);
    boards.change(job, 'title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main');
    const { url, end } = await running(boards);
    const hits = async (): Promise<string[]> => {
      const html = await current(`${url}like/spaces/wagon/well/`);
      return [...html.matchAll(/<h3[^>]*>\d\. <a[^>]*>([^<]*)/g)].map(([, title = '']) => title);
    };
    const currents = async (): Promise<string[]> => {
      const html = await current(`${url}like/spaces/wagon/well/`);
      return [...html.matchAll(/([\d.]+ A) on it/g)].map(([, text = '']) => text);
    };
    expect(await hits()).toEqual(['One amplifier']);
    const second = boards
      .read(job)
      .replace('id: demo', 'id: second')
      .replace(/^title: .*$/m, 'title: Another');
    boards.write('content/jobs/second.yaml', second);
    await expect.poll(hits).toEqual(expect.arrayContaining(['Another', 'One amplifier']));
    const [before = ''] = await currents();
    expect(before).toMatch(/^[\d.]+ A$/);
    boards.change('content/parts/all.yaml', 'load: 4 ohm, power: 300 W', 'load: 4 ohm, power: 400 W');
    await expect.poll(async () => new Set(await currents()).has(before)).toBe(false);
    expect((await currents()).length).toBe(2);
    expect(await end()).toBeLessThanOrEqual(1);
  });

  it('says that its port is in use, with the status of what is missing outside', async () => {
    const first = await serveFolder(shop.root);
    const told: string[] = [];
    const effects = { ...realEffects(shop.root), tell: (text: string) => told.push(text) };
    const status = await serve(effects, Number(new URL(first.url).port), Promise.resolve());
    expect([status, told.join()]).toEqual([3, expect.stringContaining('is in use')]);
    await first.close();
  });
});
