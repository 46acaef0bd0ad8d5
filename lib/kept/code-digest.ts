import { createHash, type Hash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the code itself: `lib` in a checkout, what it was compiled to in the package. */
const codeFolder = fileURLToPath(new URL('..', import.meta.url));

/**
 * Digest of all that a result depends on beside its input: every file of the code that may be run, by its content, the packages that it
 * builds upon by name and version, Node with its libraries, and the platform.
 */
export function codeDigest(folder: string = codeFolder): string {
  const hash = createHash('sha256');
  addText(hash, 'node', JSON.stringify([process.versions, process.platform, process.arch]));
  addFolder(hash, folder);
  addText(hash, 'packages', packagesBelow(projectOf(folder)).join('\n'));
  return hash.digest('hex');
}

/** What is compiled for readers of the code, and never run: its types, and its way back to the source. */
const unrun = /\.(?:d\.ts|map)$/;

/** Adds every file below a folder that may be run, in the order of names. */
function addFolder(hash: Hash, folder: string): void {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !unrun.test(entry.name))
    .map(({ parentPath, name }) => join(parentPath, name))
    .sort();
  for (const path of paths) {
    const bytes = readFileSync(path);
    hash.update(JSON.stringify([relative(folder, path).split(sep).join('/'), bytes.length])).update(bytes);
  }
}

/** Name and length first, so that no two lists run into the same bytes. */
function addText(hash: Hash, name: string, text: string): void {
  hash.update(JSON.stringify([name, text.length])).update(text);
}

/** The nearest folder above with a package file. */
function projectOf(folder: string): string {
  if (existsSync(join(folder, 'package.json')) || dirname(folder) === folder) return folder;
  return projectOf(dirname(folder));
}

/** Name, version and place of every package that a project builds upon, directly or through others. */
function packagesBelow(project: string): string[] {
  const seen = new Map<string, string>();
  const waiting = dependenciesOf(packageFile(project)).map((name) => ({ name, from: project }));
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const folder = packageFolder(next.name, next.from);
    if (folder === null || seen.has(folder)) continue;
    const file = packageFile(folder);
    seen.set(folder, `${next.name} ${textAt(file, 'version')}`);
    waiting.push(...dependenciesOf(file).map((name) => ({ name, from: folder })));
  }
  return [...seen]
    .map(([folder, name]) => `${relative(project, folder).split(sep).join('/')} ${name}`)
    .sort();
}

/** Where a package is found from a folder, as Node looks for it; null where it is not installed. */
function packageFolder(name: string, from: string): string | null {
  const here = join(from, 'node_modules', name);
  if (existsSync(join(here, 'package.json'))) return here;
  return dirname(from) === from ? null : packageFolder(name, dirname(from));
}

function packageFile(folder: string): unknown {
  try {
    return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  } catch {
    return null;
  }
}

function dependenciesOf(file: unknown): string[] {
  return ['dependencies', 'optionalDependencies'].flatMap((kind) => {
    const names = fieldOf(file, kind);
    return typeof names === 'object' && names !== null ? Object.keys(names) : [];
  });
}

function textAt(file: unknown, name: string): string {
  return String(fieldOf(file, name) ?? '');
}

function fieldOf(file: unknown, name: string): unknown {
  return typeof file === 'object' && file !== null ? Reflect.get(file, name) : undefined;
}
