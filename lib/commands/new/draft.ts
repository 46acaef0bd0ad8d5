import { readFile, rm } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Effects } from '../effects.ts';
import type { Answers } from './ask/question.ts';

/** Answers of a person who broke off, so that the next try goes on from there. Nothing private is asked. */
export interface Draft {
  readonly path: string;
  /** Answers of an earlier try; none where there was none. */
  readonly answers: Answers;
  save(answers: Answers): Promise<void>;
  discard(): Promise<void>;
}

/** The draft of one thing that is asked for, such as `vehicle-old-van`. */
export async function openDraft(effects: Effects, name: string): Promise<Draft> {
  const path = `.rackleaf/drafts/${name}.json`;
  const full = resolve(effects.root, path);
  return {
    path,
    answers: answersIn(await readFile(full, 'utf8').catch(() => '')),
    save: (answers) => effects.write(path, `${JSON.stringify(answers, null, 2)}\n`),
    discard: () => rm(full, { force: true }),
  };
}

/** What a draft holds; none where it is not one. */
function answersIn(text: string): Answers {
  try {
    const data: unknown = JSON.parse(text);
    if (typeof data !== 'object' || data === null) return {};
    return Object.fromEntries(
      Object.entries(data).flatMap(([key, lines]: [string, unknown]) =>
        Array.isArray(lines) ? [[key, lines.filter((line) => typeof line === 'string')]] : [],
      ),
    );
  } catch {
    return {};
  }
}
