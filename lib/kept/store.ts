import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { threadId } from 'node:worker_threads';
import { packed, unpacked } from './entry.ts';

/** Kept results in a folder, that may be deleted at any time. */
export interface Store {
  /** The result of a step that is kept under a key, in a box; null where there is none that can be believed. */
  read<T>(step: string, key: string): { readonly value: T } | null;
  /** Keeps a result, where that can be done. */
  write(step: string, key: string, value: unknown): void;
  /** Why results could not be kept, such as a full disk; null while they can. */
  fault(): string | null;
  /** True once anything was written. */
  hasWritten(): boolean;
  /** Removes what was used longest ago, until the rest is no more than the limit. */
  trim(): void;
}

export interface StoreOptions {
  /** The most that is kept, bytes. Default: a gigabyte. */
  readonly limitBytes?: number;
  /** Writes a file. Tests hand in one that fails. */
  readonly writeFile?: (path: string, bytes: Uint8Array) => void;
}

const usualLimitBytes = 2 ** 30;
/** A use is noted on an entry once in so long, ms: noting costs a write. */
const notedMs = 3_600_000;
/** A file that a run left half written is cleared away after so long, ms. */
const abandonedMs = 3_600_000;
const unfinished = '.part';

/**
 * Opens the kept results of a folder. Nothing of it is trusted: an entry of another version, cut short or altered is as
 * good as none, and one that can't be written is left out. Any number of processes may share the folder: an entry is
 * written under a name of its own, then renamed, and two that write the same one write the same bytes.
 */
export function openStore(folder: string, options: StoreOptions = {}): Store {
  const { limitBytes = usualLimitBytes, writeFile = writeFileSync } = options;
  let fault: string | null = null;
  let written = 0;
  // A folder costs as much as an entry to make and to clear away: there are few, so that a small store has not one for each.
  const pathOf = (step: string, key: string): string => join(folder, step, key.slice(0, 1), key.slice(1));
  return {
    read: <T>(step: string, key: string) => {
      const path = pathOf(step, key);
      try {
        const found = unpacked<T>(key, readFileSync(path));
        if (found) noteUse(path);
        return found;
      } catch {
        return null;
      }
    },
    write: (step, key, value) => {
      if (fault !== null) return;
      const path = pathOf(step, key);
      written += 1;
      try {
        put(
          path,
          `${path}.${process.pid}-${threadId}-${written}${unfinished}`,
          packed(key, value),
          writeFile,
        );
      } catch (error) {
        fault = error instanceof Error ? error.message : String(error);
      }
    },
    fault: () => fault,
    hasWritten: () => written > 0,
    trim: () => trim(folder, limitBytes),
  };
}

function put(
  path: string,
  own: string,
  bytes: Buffer,
  writeFile: (path: string, bytes: Uint8Array) => void,
): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFile(own, bytes);
    renameSync(own, path);
  } catch (error) {
    rmSync(own, { force: true });
    throw error;
  }
}

/** Notes that an entry was used; one of a store that may only be read is used without a note. */
function noteUse(path: string): void {
  const now = new Date();
  try {
    if (now.getTime() - statSync(path).mtimeMs > notedMs) utimesSync(path, now, now);
  } catch {
    // It may be removed sooner than one that was noted, and is computed anew then.
  }
}

interface Kept {
  readonly path: string;
  readonly bytes: number;
  readonly usedMs: number;
}

function trim(folder: string, limitBytes: number): void {
  const all = keptBelow(folder);
  let bytes = all.reduce((sum, one) => sum + one.bytes, 0);
  const now = Date.now();
  for (const one of all.toSorted((a, b) => a.usedMs - b.usedMs)) {
    const abandoned = one.path.endsWith(unfinished) && now - one.usedMs > abandonedMs;
    if (bytes <= limitBytes && !abandoned) continue;
    if (removed(one.path)) bytes -= one.bytes;
  }
}

/** Removes a file; false where that is not allowed, so that it stays. */
function removed(path: string): boolean {
  try {
    rmSync(path, { force: true });
    return true;
  } catch {
    return false;
  }
}

/** Every file below a folder. One that another process takes away meanwhile is left out. */
function keptBelow(folder: string): Kept[] {
  try {
    return readdirSync(folder, { recursive: true, withFileTypes: true }).flatMap((entry): Kept[] => {
      if (!entry.isFile()) return [];
      const path = join(entry.parentPath, entry.name);
      const { size, mtimeMs } = statSync(path, { throwIfNoEntry: false }) ?? { size: 0, mtimeMs: 0 };
      return [{ path, bytes: size, usedMs: mtimeMs }];
    });
  } catch {
    return [];
  }
}
