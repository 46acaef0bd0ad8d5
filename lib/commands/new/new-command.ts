import { nearestName } from '../../read/names/nearest-name.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import type { Answers, Asker } from './ask/question.ts';
import type { Given } from './new-file.ts';
import { flagsOf, flagsText, type NewWhat } from './new-flags.ts';
import { refused } from './refused.ts';

/** What stands behind `rackleaf new`. */
export interface NewWords {
  readonly words: readonly string[];
  /** Answers that flags gave. */
  readonly lists: Answers;
  /** True where only the flags are asked for. */
  readonly tellsFlags: boolean;
}

type Begin = (effects: Effects, given: Given, asker: Asker | null) => Promise<ExitStatus>;

const kinds: Readonly<Record<NewWhat, Begin>> = {
  shop: async (effects, given, asker) => {
    const { newShop } = await import('./new-shop.ts');
    return newShop(effects, given.answers, asker);
  },
  vehicle: async (effects, given, asker) => {
    const { newVehicle } = await import('./new-vehicle.ts');
    return newVehicle(effects, given, asker);
  },
  part: async (effects, given, asker) => {
    const { newPart } = await import('./new-part.ts');
    return newPart(effects, given, asker);
  },
  shelf: async (effects, given, asker) => {
    const { newShelf } = await import('./new-shelf.ts');
    return newShelf(effects, given, asker);
  },
  job: async (effects, given, asker) => {
    const { newJob } = await import('./new-job.ts');
    return newJob(effects, given, asker);
  },
};

function isKind(word: string): word is keyof typeof kinds {
  return Object.hasOwn(kinds, word);
}

/** `rackleaf new shop`, `new vehicle`, `new part`, `new shelf` and `new job`; `new NAME` is a job of that name. */
export async function newCommand(
  effects: Effects,
  { words, lists, tellsFlags }: NewWords,
): Promise<ExitStatus> {
  const [first, second] = words;
  if (first === undefined) return refuse(effects, 'say what: rackleaf new shop, vehicle, part, shelf or job');
  const what = isKind(first) ? first : 'job';
  const name = isKind(first) ? (second ?? null) : first;
  if (!isKind(first) && second !== undefined) {
    const near = nearestName(first, Object.keys(kinds)) ?? 'job';
    return refuse(effects, `there is no new ${first}; did you mean rackleaf new ${near} ${second}?`);
  }
  if (what === 'shop' && name !== null)
    return refuse(effects, `a shop takes no name "${name}": --title gives it`);
  const { id: [flagged] = [], ...answers } = lists;
  const strange = Object.keys(answers).find((flag) => !flagsOf(what, answers).includes(flag));
  if (strange !== undefined) return refuse(effects, `--${strange} does not go with new ${what}`);
  if (tellsFlags) {
    const text = await toldFlags(effects, what, answers);
    if (text === null) return exitStatus.inputErrors;
    effects.out(text);
    return exitStatus.done;
  }
  return kinds[what](effects, { id: name ?? flagged ?? null, answers }, await effects.asker());
}

/** The flags of one thing; of a part that is like another the names that may differ. Null where there is none such, which is told. */
async function toldFlags(effects: Effects, what: NewWhat, answers: Answers): Promise<string | null> {
  const { like: [like] = [], kind: [kind = null] = [] } = answers;
  if (what !== 'part' || like === undefined) return flagsText(what, answers);
  const { likeFile } = await import('./part/like/like-file.ts');
  const file = likeFile(await effects.readContent(), like, kind);
  if (typeof file === 'string') {
    refused(effects, file);
    return null;
  }
  return file.questions
    .map(({ key, asks, hints }) => [`--${key}  ${asks}`, ...hints({}).map((one) => `    ${one}`)].join('\n'))
    .join('\n');
}

function refuse(effects: Effects, message: string): ExitStatus {
  return refused(effects, `${message}\nrackleaf new --help tells more`);
}
