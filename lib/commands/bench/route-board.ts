import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/* Places and routes the board of the benchmark by the code of a tree, once and from cold; gives out the user time (s). */
const [tree = ''] = process.argv.slice(2);
const inTree = (path: string): string => pathToFileURL(join(tree, path)).href;
// As a command of that tree runs: with what it sets of the engine, where it has that.
const engine = 'lib/commands/engine.ts';
if (existsSync(join(tree, engine))) await import(inTree(engine));
const boards: typeof import('./boards.ts') = await import(inTree('lib/commands/bench/boards.ts'));
const board = boards.benchBoard(1);
if (!board) throw new Error('The board of the benchmark has no shape.');
const before = process.cpuUsage();
boards.layOutAndRoute(board);
process.stdout.write(String(process.cpuUsage(before).user / 1e6));
