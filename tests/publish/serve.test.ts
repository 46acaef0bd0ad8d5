import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Served, serve } from '../../lib/publish/serve/serve.ts';
import type { LoadedSite } from '../../lib/publish/serve/serve-site.ts';
import { samplePlan } from './sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from './sample-site.ts';

const problem = {
  where: { file: 'content/jobs/sample-job.yaml', line: 3, column: 9, path: '/title' },
  message: 'needs a text, such as "<Board>"',
};

function titled(title: string): LoadedSite {
  const plan = samplePlan();
  return { site: sampleSite([sampleJob({ ...plan, job: { ...plan.job, title } })]), problems: [] };
}

let folder = '';
let served: Served | null = null;
let next: LoadedSite = titled('First title');
const said: string[] = [];

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rackleaf-serve-'));
  next = titled('First title');
  said.length = 0;
});
afterEach(async () => {
  await served?.close();
  await rm(folder, { recursive: true, force: true });
});

async function start(): Promise<string> {
  served = await serve({
    load: async () => next,
    drawingsOf: sampleDrawings,
    folders: [folder],
    say: (message) => said.push(message),
  });
  return served.url;
}

/** The job's page once it holds a text. */
async function pageWith(url: string, text: string): Promise<string> {
  let body = '';
  await expect
    .poll(
      async () => {
        body = await (await fetch(`${url}jobs/sample-job/`)).text();
        return body;
      },
      { timeout: 10_000 },
    )
    .toContain(text);
  return body;
}

describe('serve', () => {
  it('gives pages, assets and the search index to this machine alone', async () => {
    const url = await start();
    expect(new URL(url).hostname).toBe('127.0.0.1');
    expect(await (await fetch(`${url}jobs/sample-job/index.html`)).text()).toContain('First title');
    expect((await fetch(`${url}assets/styles.css`)).headers.get('content-type')).toContain('text/css');
    expect((await fetch(`${url}pagefind/pagefind-entry.json`)).status).toBe(200);
    expect((await fetch(`${url}nothing/`)).status).toBe(404);
    expect((await fetch(`${url}%E0%A4%A`)).status).toBe(200);
  });

  it('shows what was saved, and tells the browser to reload', async () => {
    const url = await start();
    const events = (await fetch(`${url}changes`)).body?.getReader();
    await events?.read();
    next = titled('Second title');
    await writeFile(join(folder, 'job.yaml'), 'changed');
    await pageWith(url, 'Second title');
    const told = await events?.read();
    expect(new TextDecoder().decode(told?.value)).toContain('event: change');
    await events?.cancel();
  });

  it('keeps the last good page when the input is bad, with the problems above it', async () => {
    const url = await start();
    next = { site: null, problems: [problem] };
    await writeFile(join(folder, 'job.yaml'), 'bad');
    const body = await pageWith(url, 'content/jobs/sample-job.yaml:3:9');
    expect(body).toContain('First title');
    expect(body).toContain('&lt;Board&gt;');
    expect(said.join('\n')).toContain('content/jobs/sample-job.yaml:3:9: error');
  });

  it('shows the problems alone when there never was a good page', async () => {
    next = { site: null, problems: [problem] };
    const response = await fetch(await start());
    expect(response.status).toBe(503);
    expect(await response.text()).toContain('needs a text');
  });
});
