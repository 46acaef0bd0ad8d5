import { createHash } from 'node:crypto';
import type { BigIntStats } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { encodingFault } from '../../read/encoding.ts';
import { slashedPath } from '../site/slashed-path.ts';

/** A file as it stood when it was looked at. */
export interface SeenFile {
  /** Path from the root, with forward slashes. */
  readonly path: string;
  /** Of its bytes; where it can't be read, a word that says why. */
  readonly digest: string;
  /** What it says; null for a file that is no text, and for one that can't be read. */
  readonly text: string | null;
  /** Why what it says is unknown; null where it is known, or the file is no text. */
  readonly fault: FileFault | null;
}

/** What keeps a text from being read, and from which line on. */
export interface FileFault {
  readonly line: number;
  readonly message: string;
}

/** What one look through the folders found. */
export interface Look {
  /** By path. Equal lists are equal content: names and bytes. */
  readonly files: readonly SeenFile[];
  /** Folders that are not there. */
  readonly missing: readonly string[];
}

interface Known {
  readonly file: SeenFile;
  /** What the system says of the file without opening it. */
  readonly stamp: string;
  readonly bytes: number;
  /** False where the file was so young when it was read that it can have changed since within one tick of its times. */
  readonly isOld: boolean;
}

/** A file whose times are younger than this when it is read is read again: some disks tell times by two seconds. */
const youngMs = 2500;

/** Bytes that are read again in every look although nothing tells of a change: some disks tell nothing. */
const againBytes = 4 * 2 ** 20;

/** A system lets a program have so many files open and no more. */
const openAtOnce = 64;

/** Files whose text is held: a frozen plan is large, and read where it is needed. */
const textEndings = ['.yaml', '.md'];

/**
 * Looks through folders by what their files hold. A file is read where its size, times or number on the disk changed,
 * where it was young when it was read last, and by turns in any case: so a change of the same size and time is seen too.
 */
export class FileLooks {
  readonly #root: string;
  readonly #folders: readonly string[];
  #known: ReadonlyMap<string, Known> = new Map();
  /** The path after which the turn of the next look begins. */
  #turn = '';

  /** `folders` are named from the root. */
  constructor(root: string, folders: readonly string[]) {
    this.#root = root;
    this.#folders = folders;
  }

  /** @param byTurns Whether some files are read again although nothing tells of a change. */
  async look(byTurns = true): Promise<Look> {
    const lists = await Promise.all(this.#folders.map((folder) => this.#pathsBelow(folder)));
    const missing = this.#folders.filter((_, index) => lists[index] === null);
    const paths = lists.flatMap((list) => list ?? []).sort();
    const again: ReadonlySet<string> = byTurns ? this.#turnOf(paths) : new Set();
    const known = new Map<string, Known>();
    for (let at = 0; at < paths.length; at += openAtOnce) {
      const some = paths.slice(at, at + openAtOnce);
      const seen = await Promise.all(
        some.map((path) => seenFile(this.#root, path, this.#known.get(path), again.has(path))),
      );
      for (const one of seen) if (one !== null) known.set(one.file.path, one);
    }
    this.#known = known;
    return { files: [...known.values()].map(({ file }) => file), missing };
  }

  /** The files that are read again in this look, whatever the system says of them. */
  #turnOf(paths: readonly string[]): ReadonlySet<string> {
    const start = paths.findIndex((path) => path > this.#turn);
    const order = start < 0 ? paths : [...paths.slice(start), ...paths.slice(0, start)];
    const turn = new Set<string>();
    let bytes = 0;
    for (const path of order) {
      bytes += this.#known.get(path)?.bytes ?? 0;
      if (bytes > againBytes && turn.size > 0) break;
      turn.add(path);
      this.#turn = path;
    }
    return turn;
  }

  /** Paths of all files below a folder; null where the folder is not there. */
  async #pathsBelow(folder: string): Promise<string[] | null> {
    const full = join(this.#root, folder);
    try {
      const entries = await readdir(full, { recursive: true, withFileTypes: true });
      return entries
        .filter((entry) => entry.isFile())
        .map((entry) => slashedPath(this.#root, join(entry.parentPath, entry.name)));
    } catch {
      return (await stat(full).catch(() => null)) === null ? null : [];
    }
  }
}

/** A file as it is now, opened where what is known of it may be out of date; null where it went away meanwhile. */
async function seenFile(
  root: string,
  path: string,
  known: Known | undefined,
  again: boolean,
): Promise<Known | null> {
  const full = join(root, path);
  try {
    const stats = await stat(full, { bigint: true });
    const stamp = `${stats.ino} ${stats.size} ${stats.mtimeNs} ${stats.ctimeNs}`;
    if (known?.stamp === stamp && known.isOld && !again) return known;
    const content = await readFile(full);
    const isOld = Date.now() - newestMs(stats) > youngMs;
    return { file: fileOf(path, content, known?.file), stamp, bytes: content.length, isOld };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    if (code === 'ENOENT') return null;
    const fault = { line: 1, message: `the file can not be read (${code})` };
    return { file: { path, digest: code, text: null, fault }, stamp: '', bytes: 0, isOld: false };
  }
}

function newestMs({ mtimeMs, ctimeMs }: BigIntStats): number {
  return Number(mtimeMs > ctimeMs ? mtimeMs : ctimeMs);
}

function fileOf(path: string, content: Uint8Array, known: SeenFile | undefined): SeenFile {
  const digest = createHash('sha256').update(content).digest('hex');
  if (known?.digest === digest) return known;
  if (!textEndings.some((ending) => path.endsWith(ending))) return { path, digest, text: null, fault: null };
  try {
    return {
      path,
      digest,
      text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(content),
      fault: null,
    };
  } catch {
    return { path, digest, text: null, fault: notUtf8(content) };
  }
}

/** Where a text that is no UTF-8 stops being one: the mark that takes the place of a bad byte tells. */
function notUtf8(content: Uint8Array): FileFault {
  const read = new TextDecoder('utf-8').decode(content);
  const fault = encodingFault(read);
  const line = read.slice(0, fault?.offset ?? 0).split('\n').length;
  const isCut = fault === null || fault.offset >= read.length - 1;
  return {
    line,
    message: isCut ? 'the file ends within a letter: it was saved only in part' : fault.message,
  };
}
