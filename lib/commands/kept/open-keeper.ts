import { join } from 'node:path';
import { codeDigest } from '../../kept/code-digest.ts';
import { type Keeper, keeperOf } from '../../kept/keeper.ts';
import { openStore } from '../../kept/store.ts';
import { once } from '../../plan/once-each.ts';

/** Where the kept results of a shop lie. The folder may be deleted at any time. */
export function keptFolder(root: string): string {
  return join(root, '.rackleaf', 'kept');
}

/** The code that a process has loaded does not change under it. */
const codeOfProcess = once(() => codeDigest());

/** Results kept in a folder, by the code of this process. */
export interface OpenKeeper extends Keeper {
  /** Why results could not be kept, such as a full disk; null while they can. */
  fault(): string | null;
  /** Removes what was used longest ago where too much is kept; looks only where something was added. */
  trim(): void;
}

/** Opens the kept results of a folder for this thread. */
export function openKeeper(folder: string): OpenKeeper {
  const store = openStore(folder);
  return {
    ...keeperOf(store, codeOfProcess()),
    fault: store.fault,
    trim: () => void (store.hasWritten() && store.trim()),
  };
}
