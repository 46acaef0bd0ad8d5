import { writeFile } from 'node:fs/promises';
import { bundleScript } from './bundle.ts';
import { bundleNames } from './names.ts';
import { compiledScript } from './script.ts';

/* Run as the package is compiled: from then on nobody needs the bundler. */

for (const name of bundleNames) await writeFile(compiledScript(name), await bundleScript(name));
