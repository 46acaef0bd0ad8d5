import { serve as serveSite } from '../publish/serve/serve.ts';
import { sitePlaces } from '../publish/site/build-site.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { SchemaRenewal } from './schemas/schema-renewal.ts';
import { openPageMaker } from './serve/page-maker.ts';

/** `rackleaf serve`: the site to this machine alone, anew on every save, until it is interrupted. */
export async function serve(effects: Effects, port: number, stop: Promise<void>): Promise<ExitStatus> {
  const maker = openPageMaker(effects.root, effects.tell);
  const renewal = new SchemaRenewal(effects, maker);
  const served = await serveSite({
    root: effects.root,
    maker,
    onSave: ({ files }) => renewal.begin(files),
    built: sitePlaces(effects.root, 'bench').site,
    port,
    say: effects.tell,
  });
  if ('missing' in served) {
    effects.tell(served.missing);
    return exitStatus.missing;
  }
  effects.tell(`serving ${served.url}; Ctrl-C ends it`);
  await stop;
  // What is given up at the end is no error of the input.
  const hasErrors = served.hasErrors();
  await renewal.end();
  await served.close();
  return hasErrors ? exitStatus.inputErrors : exitStatus.done;
}
