import { execFile } from 'node:child_process';
import { mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

/** What the package holds of a tree's code, in a folder of its own. */
export interface Compiled {
  /** The module that the command starts. */
  readonly cli: string;
  remove(): Promise<void>;
}

/** Compiles the code of a tree as `npm pack` does, beside the packages that it builds upon. */
export async function compiled(tree: string): Promise<Compiled> {
  const folder = await mkdtemp(join(tmpdir(), 'rackleaf-compiled-'));
  const remove = () => rm(folder, { recursive: true, force: true });
  const line = [compiler(), '-p', join(tree, 'lib'), '--outDir', join(folder, '.dist')];
  try {
    await promisify(execFile)(process.execPath, line, { cwd: tree });
  } catch (cause) {
    await remove();
    throw new Error(`The code of ${tree} could not be compiled.`, { cause });
  }
  await writeFile(join(folder, 'package.json'), '{ "type": "module" }');
  // A junction needs no right of its own on Windows; elsewhere the word is passed over.
  await symlink(join(tree, 'node_modules'), join(folder, 'node_modules'), 'junction');
  return { cli: join(folder, '.dist/cli.js'), remove };
}

/** The compiler among the packages of this tree. */
function compiler(): string {
  const own = createRequire(fileURLToPath(import.meta.url));
  return join(dirname(own.resolve('typescript/package.json')), 'bin/tsc');
}
