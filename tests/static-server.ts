import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.jpg': 'image/jpeg',
};

export interface StaticServer {
  readonly url: string;
  close(): Promise<void>;
}

/**
 * Serves a folder as a plain web server does, below a base path: a built site must work under any. `headersOf`: what a host
 * sends beside the type, by the path that is asked for.
 */
export async function serveFolder(
  folder: string,
  base = '/',
  headersOf: (path: string) => Readonly<Record<string, string>> = () => ({}),
): Promise<StaticServer> {
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const path = decodeURIComponent(pathname);
    const inside = normalize(path.startsWith(base) ? path.slice(base.length) : 'nowhere');
    const file = inside === '.' || inside.endsWith('/') ? join(inside, 'index.html') : inside;
    try {
      const body = await readFile(join(folder, file));
      const type = types[extname(file)] ?? 'application/octet-stream';
      response.writeHead(200, { 'content-type': type, ...headersOf(path) });
      response.end(body);
    } catch {
      response.writeHead(404).end('not found');
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  return {
    url: `http://127.0.0.1:${port}${base}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
