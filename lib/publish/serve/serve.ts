import { createServer, type Server, type ServerResponse } from 'node:http';
import type { Audience } from '../../model/audience.ts';
import { problemText } from '../../model/problem.ts';
import type { DrawingsOf } from '../site/shop-site.ts';
import { layoutsFolder } from '../site/templates.ts';
import { changesPath } from './live-page.ts';
import { type LiveSite, type LoadedSite, openLiveSite } from './serve-site.ts';
import { watchFiles } from './watch-files.ts';

export interface ServeOptions {
  /** Reads the shop's content anew. A rejection is told as a problem; the last good site stays. */
  readonly load: () => Promise<LoadedSite>;
  readonly drawingsOf: DrawingsOf;
  /** Folders whose changes ask for a new load: the content. */
  readonly folders: readonly string[];
  readonly audience?: Audience;
  /** Default: any free port. */
  readonly port?: number;
  /** Where messages go. */
  readonly say: (message: string) => void;
}

export interface Served {
  readonly url: string;
  close(): Promise<void>;
}

/** Serves a shop's site to this machine alone, page by page as asked for, and reloads it on change. */
export async function serve(options: ServeOptions): Promise<Served> {
  const { folders, port = 0, audience, drawingsOf, say } = options;
  const live = openLiveSite(drawingsOf, audience);
  const listeners = new Set<ServerResponse>();
  const reload = async (): Promise<void> => {
    await loadInto(live, options);
    for (const listener of listeners) listener.write('event: change\ndata: now\n\n');
  };
  await loadInto(live, options);
  const server = createServer((request, response) => {
    const path = pathOf(request.url);
    if (path === changesPath) listen(response, listeners);
    else void respond(live, path, response, say);
  });
  const address = await opened(server, port);
  const endWatch = await watchFiles({ folders: [...folders, layoutsFolder], onChange: reload });
  return {
    url: `http://127.0.0.1:${address}/`,
    close: () => {
      endWatch();
      server.closeAllConnections();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}

async function loadInto(live: LiveSite, { load, say }: ServeOptions): Promise<void> {
  try {
    const loaded = await load();
    for (const problem of loaded.problems) say(problemText(problem));
    live.take(loaded);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    say(message);
    const where = { file: 'content', line: 1, column: 1, path: '' };
    live.take({ site: null, problems: [{ where, message }] });
  }
}

/** The path that is asked for; the top of the site where it can't be read. */
function pathOf(url: string | undefined): string {
  try {
    return decodeURIComponent(new URL(url ?? '/', 'http://localhost').pathname);
  } catch {
    return '/';
  }
}

function listen(response: ServerResponse, listeners: Set<ServerResponse>): void {
  response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
  response.write(': listening\n\n');
  listeners.add(response);
  response.on('close', () => listeners.delete(response));
}

async function respond(
  live: LiveSite,
  path: string,
  response: ServerResponse,
  say: (message: string) => void,
): Promise<void> {
  try {
    const { status, type, body } = await live.answer(path);
    response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store' }).end(body);
  } catch (error) {
    say(`${path}: ${error instanceof Error ? error.message : String(error)}`);
    response.writeHead(500, { 'content-type': 'text/plain' }).end('This page could not be made.');
  }
}

function opened(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });
}
