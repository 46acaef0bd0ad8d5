import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { notReplacedText } from './replace-text.ts';
import { differenceText } from './told/line-difference.ts';

/** A file as it is, and as it is to be. */
export interface ShownChange {
  /** From the root. */
  readonly path: string;
  readonly before: string;
  readonly after: string;
  /** True where it is written without a question. */
  readonly yes: boolean;
}

/** Shows what changes in a file, line by line, and writes it once that is wanted. */
export async function writeShown(effects: Effects, change: ShownChange): Promise<ExitStatus> {
  const { path, before, after, yes } = change;
  effects.out(differenceText(path, before, after));
  const wanted = yes || (await effects.confirm(`Write this into ${path}?`));
  if (wanted === null) effects.tell('nothing is written; --yes writes it');
  if (wanted !== true) return exitStatus.done;
  const replaced = await effects.replaceText(path, before, after);
  if (replaced === 'written') {
    effects.tell(`${path} written`);
    return exitStatus.done;
  }
  effects.tell(notReplacedText(path, replaced));
  return replaced === 'changed' ? exitStatus.inputErrors : exitStatus.missing;
}
