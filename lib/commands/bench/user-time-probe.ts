import { writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
import { userTimeFile } from './user-time-file.ts';

/* Loaded before a measured program: as that ends, the user time of all its threads is written down (s). */
const file = process.env[userTimeFile];
if (isMainThread && file !== undefined)
  process.on('exit', () => writeFileSync(file, String(process.cpuUsage().user / 1e6)));
