import { type FSWatcher, watch } from 'node:fs';
import { join } from 'node:path';
import { FileLooks, type Look } from './file-looks.ts';

export interface WatchOptions {
  readonly root: string;
  /** Named from the root. */
  readonly folders: readonly string[];
  /** Called with what stands there as soon as a change has settled. */
  readonly onSave: (look: Look) => void;
  /** Called with the files that are still being written while a change has not settled yet; with none once it has. */
  readonly onWriting?: (paths: readonly string[]) => void;
  /** How often the folders are looked through, for changes that the system did not tell of (ms). */
  readonly everyMs?: number;
}

export interface FileWatch {
  /** What stood there when the watch began. */
  readonly first: Look;
  end(): void;
}

/** Time between two looks that must agree before a change counts as settled: editors write in several strokes (ms). */
const settleMs = 30;
/** What is still being written after this is taken as it stands (ms). */
const longestWriteMs = 5000;
/** Looks take at most this share of the time. */
const lookShare = 0.05;

/**
 * Watches folders by their content. The system's word only wakes the look through them, so that nothing is missed where
 * it tells too little, and nothing is done where it tells too much.
 */
export async function watchFiles(options: WatchOptions): Promise<FileWatch> {
  const watching = new Watching(options);
  return { first: await watching.begin(), end: () => watching.end() };
}

class Watching {
  readonly #options: WatchOptions;
  readonly #looks: FileLooks;
  readonly #watchers = new Map<string, FSWatcher>();
  #known: Look = { files: [], missing: [] };
  #timer: NodeJS.Timeout | undefined;
  #isLooking = false;
  #wasWoken = false;
  #isSoon = false;
  #hasEnded = false;

  constructor(options: WatchOptions) {
    this.#options = options;
    this.#looks = new FileLooks(options.root, options.folders);
  }

  async begin(): Promise<Look> {
    this.#openWatchers();
    this.#known = await this.#looks.look();
    this.#lookIn(this.#options.everyMs ?? 1000);
    return this.#known;
  }

  end(): void {
    this.#hasEnded = true;
    clearTimeout(this.#timer);
    for (const watcher of this.#watchers.values()) watcher.close();
  }

  #lookIn(ms: number): void {
    clearTimeout(this.#timer);
    if (!this.#hasEnded) this.#timer = setTimeout(() => void this.#look(), ms);
  }

  #wake(): void {
    if (this.#isLooking) this.#wasWoken = true;
    // Not put off by what comes after: a file that is written all the time would never be looked at.
    else if (!this.#isSoon) {
      this.#isSoon = true;
      this.#lookIn(settleMs);
    }
  }

  async #look(): Promise<void> {
    const isRegular = !this.#isSoon;
    this.#isLooking = true;
    this.#wasWoken = false;
    this.#isSoon = false;
    const startedMs = performance.now();
    const now = await this.#settled(isRegular);
    if (now !== null && !this.#hasEnded) {
      this.#known = now;
      this.#options.onSave(now);
    }
    this.#openWatchers();
    this.#isLooking = false;
    const tookMs = performance.now() - startedMs;
    if (this.#wasWoken) this.#wake();
    else this.#lookIn(Math.max(this.#options.everyMs ?? 1000, tookMs / lookShare));
  }

  /** What stands there once two looks agree; null where it is what stood there before. */
  async #settled(isRegular: boolean): Promise<Look | null> {
    let last = await this.#looks.look(isRegular);
    if (changesOf(this.#known, last).length === 0) return null;
    let wasWriting = false;
    const untilMs = performance.now() + longestWriteMs;
    while (!this.#hasEnded && performance.now() < untilMs) {
      await new Promise((resolve) => setTimeout(resolve, settleMs));
      const next = await this.#looks.look(false);
      const writing = changesOf(last, next);
      last = next;
      if (writing.length === 0) break;
      wasWriting = true;
      this.#options.onWriting?.(writing);
    }
    if (wasWriting) this.#options.onWriting?.([]);
    return changesOf(this.#known, last).length === 0 ? null : last;
  }

  /** Opens a watch of each folder that has none, and drops that of one which is gone: it would hear nothing more. */
  #openWatchers(): void {
    for (const folder of this.#known.missing) {
      this.#watchers.get(folder)?.close();
      this.#watchers.delete(folder);
    }
    for (const folder of this.#options.folders) {
      if (this.#hasEnded || this.#watchers.has(folder)) continue;
      try {
        const watcher = watch(join(this.#options.root, folder), { recursive: true }, () => this.#wake());
        watcher.on('error', () => {
          watcher.close();
          this.#watchers.delete(folder);
        });
        this.#watchers.set(folder, watcher);
      } catch {
        // Not there, or the system does not tell: the regular look does.
      }
    }
  }
}

/** Paths of the files and folders in which two looks differ. */
function changesOf(before: Look, after: Look): string[] {
  const was = new Map(before.files.map(({ path, digest }) => [path, digest]));
  const is = new Map(after.files.map(({ path, digest }) => [path, digest]));
  const changed = [...new Set([...was.keys(), ...is.keys()])].filter(
    (path) => was.get(path) !== is.get(path),
  );
  const folders = [...new Set([...before.missing, ...after.missing])].filter(
    (folder) => before.missing.includes(folder) !== after.missing.includes(folder),
  );
  return [...changed, ...folders].sort();
}
