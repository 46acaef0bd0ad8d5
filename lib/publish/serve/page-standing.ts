import { notCurrent } from '../page/print-rules.ts';

/** How a page that is served stands against what was saved last. */
export interface Standing {
  /** Whether the page is made from the latest save. */
  readonly isCurrent: boolean;
  /** What is being done about it; null where nothing is. */
  readonly work: 'planning' | 'writing' | null;
  /** What keeps it from being current, or is wrong elsewhere in the input: each with its place, line by line. */
  readonly troubles: readonly string[];
  /** Jobs that lists leave out, since they could not be read. */
  readonly missing: readonly string[];
  /** The digest of the page as a build would write it; empty where there is none yet. */
  readonly made: string;
}

/** The words of a standing: a head and a few words that stay in sight, and below them what it means. */
export interface StandingWords {
  /** Null where nothing need be said. */
  readonly head: string | null;
  readonly brief: string;
  readonly text: string;
}

/** A standing in words. */
export function standingWords({ isCurrent, work, troubles, made }: Standing): StandingWords {
  const errors = troubles.length === 1 ? '1 error' : `${troubles.length} errors`;
  if (isCurrent)
    return troubles.length === 0
      ? { head: null, brief: '', text: '' }
      : { head: 'ERRORS', brief: `${errors} in the latest save`, text: 'What could be read is shown here.' };
  const head = made === '' ? 'NOT MADE YET' : notCurrent;
  const isBroken = work === null && troubles.length > 0;
  return {
    head,
    brief: isBroken ? `${errors} in the latest save` : workWords(work),
    text: made === '' ? textBefore(isBroken) : textOver(isBroken),
  };
}

function workWords(work: Standing['work']): string {
  return work === 'writing' ? 'a file is being written' : 'planning the latest save';
}

function textOver(isBroken: boolean): string {
  const over = 'What stands below was made before the latest save: do not build from it.';
  return isBroken ? over : `${over} The page changes by itself.`;
}

function textBefore(isBroken: boolean): string {
  return isBroken ? 'There is no earlier page to show.' : 'The page comes by itself as soon as it is made.';
}
