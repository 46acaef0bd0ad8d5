import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

/** Names the folder of the compiled code to the threads and processes that a test starts. */
export const compiledVariable = 'RACKLEAF_COMPILED';

const own = fileURLToPath(new URL('open-thread.ts', import.meta.url));

/** Puts `open-thread.ts` of this folder in the place of the one that loads TypeScript, for a test and for what it starts. */
export function startsCompiled() {
  return {
    name: 'starts-compiled',
    resolveId: (source: string, importer?: string) =>
      source.endsWith('/open-thread.ts') && importer !== own ? own : null,
  } satisfies Plugin;
}
