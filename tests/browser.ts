import { execFileSync } from 'node:child_process';
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { access, mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import chromiumBinary from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

/** Where the shared libraries that a slim system lacks are unpacked to, once a machine. */
const librariesFolder = join(tmpdir(), 'rackleaf-browser-libraries');

/** Unpacks the libraries that the browser brings with it, unless that was done before. */
async function browserLibraries(): Promise<string> {
  const require = createRequire(import.meta.url);
  const archive = join(dirname(require.resolve('@sparticuz/chromium')), '../../bin/al2023.tar.br');
  const done = join(librariesFolder, 'lib');
  try {
    await access(done);
    return done;
  } catch {
    const staging = await mkdtemp(join(tmpdir(), 'rackleaf-browser-'));
    const tar = join(staging, 'libraries.tar');
    await pipeline(createReadStream(archive), createBrotliDecompress(), createWriteStream(tar));
    await mkdir(join(staging, 'open'));
    execFileSync('tar', ['-xf', tar, '-C', join(staging, 'open')]);
    await rename(join(staging, 'open'), librariesFolder).catch(() => undefined);
    await rm(staging, { recursive: true, force: true });
    return done;
  }
}

/** On a system without fonts of its own the browser takes those that came with it, unpacked beside it. */
function fontSettings(): Readonly<Record<string, string>> {
  return existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_PATH: join(tmpdir(), 'fonts') };
}

/**
 * Opens the browser that comes with the tests: no browser and no library of the system is needed. That one
 * is built for Linux on x64; elsewhere an installed Chrome is used.
 */
export async function openBrowser(): Promise<Browser> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return chromium.launch({ channel: 'chrome' });
  const libraries = await browserLibraries();
  const executablePath = await chromiumBinary.executablePath();
  const inherited = process.env.LD_LIBRARY_PATH;
  return chromium.launch({
    executablePath,
    args: [...chromiumBinary.args.filter((flag) => flag !== '--single-process'), '--no-sandbox'],
    env: {
      ...process.env,
      ...fontSettings(),
      LD_LIBRARY_PATH: inherited ? `${libraries}:${inherited}` : libraries,
    },
  });
}
