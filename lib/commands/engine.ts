import { setFlagsFromString } from 'node:v8';

/*
 * Loaded before all else of a command. Most runs are short, since what is dear is kept: on the engine's own terms half of
 * the processor's time then goes into optimizing functions that are soon through. They are optimized later, once they have
 * run for longer; a plan from cold loses nothing by it. Only for the engine that this was measured on (Node 20): others may
 * not know the setting.
 */
if (process.versions.v8.startsWith('11.3.')) setFlagsFromString('--interrupt-budget=600000');
