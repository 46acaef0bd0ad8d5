import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/* Draws plans from JSON by the code of a tree, once and from cold, and gives out the user time that it took (s). */
const [tree = '', ...files] = process.argv.slice(2);
const drawings: typeof import('../drawings.ts') = await import(
  pathToFileURL(join(tree, 'lib/commands/drawings.ts')).href
);
const plans = await Promise.all(files.map(async (file) => JSON.parse(await readFile(file, 'utf8'))));
const before = process.cpuUsage();
const drawingsOf = drawings.jobDrawings();
for (const plan of plans) drawingsOf(plan);
process.stdout.write(String(process.cpuUsage(before).user / 1e6));
