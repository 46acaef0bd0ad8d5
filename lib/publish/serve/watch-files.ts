import { type FSWatcher, watch } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

export interface WatchOptions {
  readonly folders: readonly string[];
  /** Called when a file was added, changed or removed; never while an earlier call is at work. */
  readonly onChange: () => Promise<void>;
  /** How often the folders are looked through, for changes that the system did not tell of. */
  readonly everyMs?: number;
}

/** Names, sizes and times of all files below the folders, as one text. */
async function fingerprint(folders: readonly string[]): Promise<string> {
  const lists = await Promise.all(folders.map(filesOf));
  return lists.flat().sort().join('\n');
}

async function filesOf(folder: string): Promise<string[]> {
  try {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile());
    return await Promise.all(
      files.map(async (entry) => {
        const path = join(entry.parentPath, entry.name);
        const { size, mtimeMs } = await stat(path);
        return `${path} ${size} ${mtimeMs}`;
      }),
    );
  } catch {
    // A folder or file that went away while it was looked at: the next look tells.
    return [];
  }
}

function watchers(folders: readonly string[], wake: () => void): FSWatcher[] {
  return folders.flatMap((folder) => {
    try {
      const watcher = watch(folder, { recursive: true }, wake);
      watcher.on('error', () => watcher.close());
      return [watcher];
    } catch {
      return [];
    }
  });
}

/**
 * Watches folders. The system's word only wakes the look through them, so that nothing is missed where it
 * tells too little, and nothing is done where it tells too much. Returns what ends it.
 */
export async function watchFiles({ folders, onChange, everyMs = 1000 }: WatchOptions): Promise<() => void> {
  let known = await fingerprint(folders);
  let looking = false;
  let ended = false;
  const look = async (): Promise<void> => {
    if (looking || ended) return;
    looking = true;
    try {
      const now = await fingerprint(folders);
      if (now !== known) {
        known = now;
        await onChange();
      }
    } finally {
      looking = false;
    }
  };
  let soon: NodeJS.Timeout | undefined;
  const wake = (): void => {
    clearTimeout(soon);
    // An editor writes in several strokes: look once they have settled.
    soon = setTimeout(look, 60);
  };
  const open = watchers(folders, wake);
  const regular = setInterval(look, everyMs);
  return () => {
    ended = true;
    clearInterval(regular);
    clearTimeout(soon);
    for (const watcher of open) watcher.close();
  };
}
