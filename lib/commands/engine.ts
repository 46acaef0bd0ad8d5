import { setFlagsFromString } from 'node:v8';

/*
 * Loaded before all else of a command. Most runs are short, since what is dear is kept: on the engine's own terms half of
 * the processor's time then goes into optimizing functions that are soon through. They are optimized later, once they have
 * run for longer; a plan from cold loses nothing by it. Most of what a run makes is soon gone, too: with much room for it
 * from the first time that it is short, less is copied to and fro. Only for the engine that this was measured on (Node 20): others may
 * not know the settings.
 */
if (process.versions.v8.startsWith('11.3.'))
  for (const setting of ['--interrupt-budget=600000', '--semi-space-growth-factor=16'])
    setFlagsFromString(setting);
