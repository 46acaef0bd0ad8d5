import { rename } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';

/** Refusals that pass: on Windows a file that a scanner or a viewer holds open can't be moved, nor its folder. */
const passing = ['EACCES', 'EBUSY', 'EPERM'];
/** Waits before it is tried again (ms), a second and a half in all. */
const waitsMs = [10, 20, 40, 80, 150, 200, 250, 350, 400];

/** What a rename is done with; tests hand in a disk that refuses. */
export interface RenameMeans {
  readonly rename: (from: string, to: string) => Promise<void>;
  readonly wait: (ms: number) => Promise<unknown>;
}

/** The disk. */
export const diskRename: RenameMeans = { rename, wait: setTimeout };

/**
 * Renames a file or folder. Where the system refuses since another program holds it for the moment, it is tried again
 * for a while; then, and for any other reason, the error is thrown.
 */
export async function patientRename(
  from: string,
  to: string,
  means: RenameMeans = diskRename,
): Promise<void> {
  for (const ms of waitsMs) {
    try {
      await means.rename(from, to);
      return;
    } catch (error) {
      if (!passing.includes(errorCode(error))) throw error;
      await means.wait(ms);
    }
  }
  await means.rename(from, to);
}

/** The system's word for what failed, such as `EBUSY`; empty where it gave none. */
export function errorCode(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
