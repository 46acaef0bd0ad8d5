import { parseArgs } from 'node:util';
import { joinedValues } from './joined-values.ts';

/** What stands on a command line behind its command. */
export interface Given {
  readonly words: readonly string[];
  readonly flags: Readonly<Record<string, string | boolean | undefined>>;
  /** Values of the options that may be given more than once. */
  readonly lists: Readonly<Record<string, readonly string[]>>;
}

/** What a command takes. */
export interface Taken {
  /** Options beside --help. */
  readonly options: Readonly<Record<string, 'boolean' | 'string'>>;
  /** Options that may be given more than once, each with a text. */
  readonly repeated?: readonly string[] | (() => Promise<readonly string[]>);
  /** Names of the words that it takes; a question mark behind one that may be left out, dots where more may follow. */
  readonly words: readonly string[];
}

/** Reads a command line by what its command takes; what is wrong with it, where it is not taken. */
export async function readLine(command: Taken, rest: readonly string[]): Promise<Given | string> {
  const once = [...Object.entries(command.options), ['help', 'boolean'] as const];
  const { repeated: named = [] } = command;
  const repeated = typeof named === 'function' ? await named() : named;
  const options = {
    ...Object.fromEntries(once.map(([key, type]) => [key, { type }])),
    ...Object.fromEntries(repeated.map((key) => [key, { type: 'string', multiple: true } as const])),
  };
  const byFlag = new Map(Object.entries(options));
  try {
    const { values, positionals } = parseArgs({
      args: joinedValues(rest, (flag) => byFlag.get(flag)?.type === 'string'),
      options,
      allowPositionals: true,
      strict: true,
    });
    const flags = Object.fromEntries(
      Object.entries(values).map(([key, value]) => [key, Array.isArray(value) ? undefined : value]),
    );
    const lists = Object.fromEntries(
      Object.entries(values).flatMap(([key, value]) =>
        Array.isArray(value) ? [[key, value.filter((one) => typeof one === 'string')]] : [],
      ),
    );
    const least = command.words.filter((word) => !word.endsWith('?')).length;
    if (flags.help !== true && positionals.length < least) return `needs ${command.words.join(' ')}`;
    if (positionals.length > command.words.length && !command.words.at(-1)?.includes('...'))
      return `does not know what to do with "${positionals[command.words.length]}"`;
    return { words: positionals, flags, lists };
  } catch (error) {
    const { flagFault } = await import('./flag-fault.ts');
    return flagFault(error, Object.keys(options));
  }
}
