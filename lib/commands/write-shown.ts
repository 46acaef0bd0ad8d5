import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { differenceText } from './told/line-difference.ts';

/** A file as it is, and as it is to be. */
export interface FileChange {
  /** From the root. */
  readonly path: string;
  readonly before: string;
  readonly after: string;
}

/** Shows what changes in a file, line by line, and writes it once that is wanted: `yes` where without a question. */
export async function writeShown(effects: Effects, change: FileChange, yes: boolean): Promise<ExitStatus> {
  const { path, before, after } = change;
  effects.out(differenceText(path, before, after));
  const wanted = await isWanted(effects, yes, `Write this into ${path}?`);
  return wanted ? writeTold(effects, change) : exitStatus.done;
}

/** Whether what was shown is to be written: with `yes`, or where whoever watches says so. */
export async function isWanted(effects: Effects, yes: boolean, question: string): Promise<boolean> {
  const wanted = yes || (await effects.confirm(question));
  if (wanted === null) effects.tell('nothing is written; --yes writes it');
  return wanted === true;
}

/** Writes a file, and tells that, or why it was left alone. */
export async function writeTold(effects: Effects, change: FileChange): Promise<ExitStatus> {
  const status = await replaceOrTell(effects, change);
  if (status === exitStatus.done) effects.tell(`${change.path} written`);
  return status;
}

/** Writes a file; where it was left alone, that is told, with what to do. */
export async function replaceOrTell(
  effects: Effects,
  { path, before, after }: FileChange,
): Promise<ExitStatus> {
  switch (await effects.replaceText(path, before, after)) {
    case 'written':
      return exitStatus.done;
    case 'changed':
      effects.tell(
        `${path} was changed meanwhile, so nothing is written\n  to do: save what is open elsewhere, then begin again`,
      );
      return exitStatus.inputErrors;
    case 'read-only':
      effects.tell(
        `${path} may only be read, so nothing is written\n  to do: allow writing to it, then begin again`,
      );
      return exitStatus.missing;
  }
}
