import { execFile } from 'node:child_process';
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { access, mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import { createBrotliDecompress } from 'node:zlib';

/** How a browser is started. */
export interface BrowserStart {
  readonly executablePath: string;
  readonly args: readonly string[];
  readonly env: Readonly<Record<string, string>>;
}

/**
 * The browser that `@sparticuz/chromium` brings, with the shared libraries that slim systems lack unpacked beside
 * it. Null where that package is not installed, or is not for this machine (it is for Linux on x64).
 */
export async function bundledBrowser(): Promise<BrowserStart | null> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  const bundle = await import('@sparticuz/chromium').then(
    (module) => module.default,
    () => null,
  );
  if (!bundle) return null;
  const libraries = await unpackedLibraries();
  const inherited = process.env.LD_LIBRARY_PATH;
  return {
    executablePath: await bundle.executablePath(),
    args: [...bundle.args.filter((flag) => flag !== '--single-process'), '--no-sandbox'],
    env: { ...fontSettings(), LD_LIBRARY_PATH: inherited ? `${libraries}:${inherited}` : libraries },
  };
}

/** On a system without fonts of its own the browser takes those that came with it, unpacked beside it. */
function fontSettings(): Readonly<Record<string, string>> {
  return existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_PATH: join(tmpdir(), 'fonts') };
}

async function unpackedLibraries(): Promise<string> {
  const target = join(tmpdir(), 'rackleaf-browser-libraries');
  const libraries = join(target, 'lib');
  const there = await access(libraries).then(
    () => true,
    () => false,
  );
  if (there) return libraries;
  const require = createRequire(import.meta.url);
  const archive = join(dirname(require.resolve('@sparticuz/chromium')), '../../bin/al2023.tar.br');
  const staging = await mkdtemp(join(tmpdir(), 'rackleaf-browser-'));
  const tar = join(staging, 'libraries.tar');
  await pipeline(createReadStream(archive), createBrotliDecompress(), createWriteStream(tar));
  await mkdir(join(staging, 'open'));
  await promisify(execFile)('tar', ['-xf', tar, '-C', join(staging, 'open')]);
  // Another run may have put them there in the meantime: then they are the same.
  await rename(join(staging, 'open'), target).catch(() => undefined);
  await rm(staging, { recursive: true, force: true });
  return libraries;
}
