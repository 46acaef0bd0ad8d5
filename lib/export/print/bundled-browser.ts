import { execFile } from 'node:child_process';
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { chmod, mkdtemp, rename, rm, stat, writeFile } from 'node:fs/promises';
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
 * The browser that `@sparticuz/chromium` brings, unpacked with its fonts and with the shared libraries that slim systems
 * lack. Null where that package is not installed, or is not for this machine (it is for Linux on x64).
 */
export async function bundledBrowser(): Promise<BrowserStart | null> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  const bundle = await import('@sparticuz/chromium').then(
    (module) => module.default,
    () => null,
  );
  if (!bundle) return null;
  const folder = await unpacked();
  const libraries = join(folder, 'lib');
  const inherited = process.env.LD_LIBRARY_PATH;
  return {
    executablePath: join(folder, browserName),
    args: [...bundle.args.filter((flag) => flag !== '--single-process'), '--no-sandbox'],
    env: {
      ...fontSettings(folder),
      LD_LIBRARY_PATH: inherited ? `${libraries}:${inherited}` : libraries,
    },
  };
}

const browserName = 'chromium';
/** Archives of folders: shared libraries, fonts, and what draws without a graphics card, which lies beside the browser. */
const archives = ['al2023', 'fonts', 'swiftshader'] as const;

/** On a system without fonts of its own the browser takes those that came with it. */
function fontSettings(folder: string): Readonly<Record<string, string>> {
  return existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_FILE: join(folder, fontsFile) };
}

const fontsFile = 'rackleaf-fonts.conf';

/**
 * The folder that the browser is unpacked in: whole, or not there at all. The package itself unpacks in place, where a
 * second process would start a browser of which the first has written half.
 */
async function unpacked(): Promise<string> {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  const packedIn = join(dirname(entry), '../../bin');
  // One of another version has another size.
  const { size } = await stat(join(packedIn, `${browserName}.br`));
  const target = join(tmpdir(), `rackleaf-browser-${size}`);
  if (existsSync(target)) return target;
  const staging = await mkdtemp(join(tmpdir(), 'rackleaf-browser-'));
  try {
    await inflate(join(packedIn, `${browserName}.br`), join(staging, browserName));
    await chmod(join(staging, browserName), 0o755);
    for (const name of archives) await extract(join(packedIn, `${name}.tar.br`), staging);
    await writeFile(join(staging, fontsFile), fontsIn(target));
    await chmod(staging, 0o755);
    // Another run may have put the same there in the meantime.
    await rename(staging, target).catch(() => undefined);
  } finally {
    await rm(staging, { recursive: true, force: true });
  }
  return target;
}

async function inflate(archive: string, to: string): Promise<void> {
  await pipeline(createReadStream(archive), createBrotliDecompress(), createWriteStream(to));
}

async function extract(archive: string, folder: string): Promise<void> {
  const tar = join(folder, 'archive.tar');
  await inflate(archive, tar);
  await promisify(execFile)('tar', ['-xf', tar, '-C', folder]);
  await rm(tar);
}

/** A configuration of fontconfig that knows the fonts in a folder. */
function fontsIn(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${folder}/fonts</dir><cachedir>${folder}/fonts-cache</cachedir></fontconfig>
`;
}
