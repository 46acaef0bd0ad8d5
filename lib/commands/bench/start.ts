import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/*
 * Starts a command of a tree in the folder that it is run in, an empty one, and then loads what it would load there for a
 * job: the modules that are asked for, of those that the tree has.
 */
const [, , tree = '.', command = 'check', ...modules] = process.argv;
const urlOf = (module: string): string => pathToFileURL(join(tree, 'lib', module)).href;
process.argv.splice(2, process.argv.length, command);
await import(urlOf('cli.ts'));
for (const module of modules) if (existsSync(join(tree, 'lib', module))) await import(urlOf(module));
process.exitCode = 0;
