import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { join } from 'node:path';
import type { Environment } from 'nunjucks';
import { once } from '../../plan/once-each.ts';
import { namedAssets } from '../site/assets/named-assets.ts';
import { siteAssets } from '../site/site-assets.ts';
import { openTemplates, projectFolder } from '../site/templates.ts';
import { answerTo } from './answers.ts';
import type { Look } from './file-looks.ts';
import { changesPath, liveNews } from './live-page.ts';
import { isOf, LiveSite } from './live-site.ts';
import type { PageMaker } from './page-maker.ts';
import { keyOf } from './scopes.ts';
import { watchFiles } from './watch-files.ts';

export interface ServeOptions {
  /** The folder that holds `content/`. */
  readonly root: string;
  readonly maker: PageMaker;
  /** Default: any free port. */
  readonly port?: number;
  /** The folder of the site that was built last. */
  readonly built: string;
  /** Where messages go. */
  readonly say: (message: string) => void;
  /** Called with the files of the shop as they stand first, and after each save. */
  readonly onSave?: (look: Look) => void;
}

export interface Served {
  readonly url: string;
  /** True where something of what was saved last could not be read or planned. */
  readonly hasErrors: () => boolean;
  close(): Promise<void>;
}

/** Why nothing can be served at a port. */
export interface NotServed {
  readonly missing: string;
}

/** Serves a shop's site to this machine alone: at once, each page as soon as it is made, and anew on every save. */
export async function serve(options: ServeOptions): Promise<Served | NotServed> {
  const serving = new Serving(options);
  const port = await serving.open(options.port ?? 0);
  if (typeof port === 'string') {
    await options.maker.close();
    return { missing: port };
  }
  await serving.watch();
  return {
    url: `http://127.0.0.1:${port}/`,
    hasErrors: () => serving.hasErrors,
    close: () => serving.close(),
  };
}

class Serving {
  readonly #options: ServeOptions;
  readonly #live: LiveSite;
  readonly #server: Server;
  /** Pages that are open in a browser, by what tells them of changes. */
  readonly #listeners = new Map<ServerResponse, string>();
  #templates: Environment = openTemplates();
  /** Read when they are first asked for after a save. */
  #assets = once(() => namedAssets(siteAssets()));
  #look: Look = { files: [], missing: [] };
  #layouts: Look = { files: [], missing: [] };
  readonly #ends: (() => void)[] = [];
  /** Settles with the first look: nothing is answered before. */
  #isReady: () => void = () => undefined;
  readonly #ready = new Promise<void>((resolve) => {
    this.#isReady = resolve;
  });

  constructor(options: ServeOptions) {
    this.#options = options;
    const { maker, say, built } = options;
    this.#live = new LiveSite({
      maker,
      say,
      lastBuilt: (file) => readFile(join(built, file), 'utf8').catch(() => null),
      onChange: (scope) => {
        for (const [listener, address] of this.#listeners) if (isOf(address, scope)) this.#tell(listener);
      },
      open: () => this.#listeners.values(),
    });
    this.#server = createServer((request, response) => {
      const url = urlOf(request);
      if (url.pathname === changesPath) this.#listen(url.searchParams.get('address') ?? '/', response);
      else void this.#respond(url, response);
    });
  }

  get hasErrors(): boolean {
    return this.#live.hasErrors;
  }

  /** Opens the port; why it can't be opened comes back as a text. */
  open(port: number): Promise<number | string> {
    return new Promise((resolve) => {
      this.#server.once('error', (error) => resolve(portText(port, error)));
      this.#server.listen(port, '127.0.0.1', () => {
        const address = this.#server.address();
        resolve(typeof address === 'object' && address !== null ? address.port : port);
      });
    });
  }

  /** Begins to watch what the shop writes, and the layouts and styles of the project. */
  async watch(): Promise<void> {
    const { root } = this.#options;
    const layouts = await watchFiles({
      root: projectFolder,
      folders: ['layouts', 'site'],
      onSave: (look) => this.#take(this.#look, look),
    });
    const content = await watchFiles({
      root,
      folders: ['content'],
      onSave: (look) => {
        this.#take(look, this.#layouts);
        this.#options.onSave?.(look);
      },
      onWriting: (paths) => this.#live.takeWriting(paths),
    });
    this.#ends.push(layouts.end, content.end);
    this.#take(content.first, layouts.first);
    this.#options.onSave?.(content.first);
    this.#isReady();
  }

  async close(): Promise<void> {
    for (const end of this.#ends) end();
    this.#live.end();
    await this.#options.maker.close();
    this.#server.closeAllConnections();
    await new Promise<void>((resolve) => {
      this.#server.close(() => resolve());
    });
  }

  #take(look: Look, layouts: Look): void {
    if (layouts !== this.#layouts) this.#assets = once(() => namedAssets(siteAssets()));
    this.#look = look;
    this.#layouts = layouts;
    this.#templates = openTemplates();
    for (const folder of look.missing)
      this.#options.say(`there is no folder ${folder}/ in ${this.#options.root}`);
    this.#live.take(look, keyOf(layouts.files));
  }

  #listen(address: string, response: ServerResponse): void {
    response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
    this.#listeners.set(response, address);
    response.on('close', () => this.#listeners.delete(response));
    this.#tell(response);
    // A page that a browser kept open is made even where nobody asks for it anew.
    void this.#live.shown(address, 0);
  }

  /** Tells an open page how it stands. */
  #tell(listener: ServerResponse): void {
    const address = this.#listeners.get(listener) ?? '/';
    const news = liveNews(address, this.#live.standing(address), this.#templates);
    listener.write(`event: standing\ndata: ${JSON.stringify(news)}\n\n`);
  }

  async #respond(url: URL, response: ServerResponse): Promise<void> {
    try {
      const path = decodeURIComponent(url.pathname);
      await this.#ready;
      const { status, type, body, location } = await answerTo(path, this.#live, {
        templates: this.#templates,
        root: this.#options.root,
        assets: this.#assets,
      });
      const more = location === undefined ? {} : { location };
      response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store', ...more }).end(body);
    } catch (error) {
      this.#options.say(`${url.pathname}: ${error instanceof Error ? error.message : String(error)}`);
      response.writeHead(500, { 'content-type': 'text/plain' }).end('This page could not be made.');
    }
  }
}

/** The address that is asked for; the top of the site where it can't be read. */
function urlOf({ url }: IncomingMessage): URL {
  const top = 'http://localhost/';
  try {
    const asked = new URL(url ?? '/', top);
    decodeURIComponent(asked.pathname);
    return asked;
  } catch {
    return new URL(top);
  }
}

function portText(port: number, error: Error): string {
  const code = 'code' in error ? error.code : '';
  const other = 'name another with --port, or --port 0 for any that is free';
  if (code === 'EADDRINUSE')
    return `port ${port} is in use by another program, perhaps by another serve; ${other}`;
  if (code === 'EACCES') return `port ${port} may not be opened by this user; ${other}`;
  return `port ${port} can not be opened (${error.message}); ${other}`;
}
