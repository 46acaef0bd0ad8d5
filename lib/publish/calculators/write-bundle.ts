import { writeFile } from 'node:fs/promises';
import { bundleCalculators } from './bundle.ts';
import { compiledScript } from './script.ts';

/* Run as the package is compiled: from then on nobody needs the bundler. */

await writeFile(compiledScript, await bundleCalculators());
