import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { rolldown } from 'rolldown';
import { projectFolder } from '../templates.ts';
import type { BundleName } from './names.ts';

/**
 * What runs in a browser with modules of `lib/` as one script: the calculators and all that they compute with, the search
 * and the words that it shares with its index. It may lie beside a page or stand in it. The same sources give the same bytes. Throws where a module takes something that no browser has: it has no
 * business in here.
 */
export async function bundleScript(name: BundleName): Promise<string> {
  const bundle = await rolldown({
    cwd: projectFolder,
    input: join(projectFolder, 'site', name, 'main.ts'),
    platform: 'browser',
    external: [],
    tsconfig: false,
    onLog: (_, { message }) => {
      throw new Error(message);
    },
  });
  const { output } = await bundle.generate({ format: 'iife', minify: true });
  await bundle.close();
  const [script, ...others] = output;
  if (others.length > 0 || script.imports.length > 0 || script.dynamicImports.length > 0)
    throw new Error(`The script ${name} takes ${[...script.imports, ...script.dynamicImports].join(', ')}.`);
  return `${await licences(Object.keys(script.modules))}${script.code}`;
}

/** The licences of the packages that modules are of, as their makers ask for it where a copy is handed on. */
async function licences(modules: readonly string[]): Promise<string> {
  const packages = new Set(
    modules.flatMap((path) => /^.*node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(path) ?? []),
  );
  const texts = await Promise.all(
    [...packages].sort().map(async (path) => {
      const name = (await readdir(path)).find((file) => /^licen[cs]e/i.test(file));
      if (name === undefined) throw new Error(`${path} has no licence.`);
      return (await readFile(join(path, name), 'utf8')).replaceAll('*/', '* /').trim();
    }),
  );
  return texts.map((text) => `/*!\n${text}\n*/\n`).join('');
}
