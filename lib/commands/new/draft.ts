import { readFile, rm } from 'node:fs/promises';
import { resolve } from 'node:path';
import { z } from 'zod';
import type { Effects } from '../effects.ts';
import type { Beforehand } from './ask/answers-of.ts';

/** Answers of a person who broke off, so that the next try goes on from there. Nothing private is asked. */
export interface Draft {
  readonly path: string;
  /** Answers of an earlier try; none where there was none. */
  readonly before: Beforehand;
  /** True where they lie there now; false where this disk takes none. */
  save(answers: Beforehand): Promise<boolean>;
  discard(): Promise<void>;
}

const heldSchema = z.object({
  answers: z.record(z.string(), z.array(z.string())),
  open: z.string().optional(),
  refused: z.record(z.string(), z.array(z.string())).optional(),
});

/** The draft of one thing that is asked for, such as `vehicle-old-van`. */
export async function openDraft(effects: Effects, name: string): Promise<Draft> {
  const path = `.rackleaf/drafts/${name}.json`;
  const full = resolve(effects.root, path);
  return {
    path,
    before: heldIn(await readFile(full, 'utf8').catch(() => '')),
    save: (answers) =>
      effects.write(path, `${JSON.stringify(answers, null, 2)}\n`).then(
        () => true,
        () => false,
      ),
    discard: () => rm(full, { force: true }),
  };
}

/** What a draft holds; none where it is not one. */
function heldIn(text: string): Beforehand {
  try {
    const { answers, open, refused } = heldSchema.parse(JSON.parse(text));
    return { answers, ...(open !== undefined && { open }), ...(refused && { refused }) };
  } catch {
    return { answers: {} };
  }
}
