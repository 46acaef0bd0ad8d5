import { nearestName } from '../../read/names/nearest-name.ts';

/** What is wrong with the flags, in our words: the parser's own tell of quotes and dashes. */
export function flagFault(error: unknown, known: readonly string[]): string {
  const message = error instanceof Error ? error.message : '';
  const [, flag = ''] = /'(?:-\w, )?--?([^'\s=]+)/.exec(message) ?? [];
  if (!known.includes(flag)) {
    const near = nearestName(flag, known);
    const takes = `it takes ${known.map((one) => `--${one}`).join(', ')}`;
    return `there is no --${flag}; ${near ? `did you mean --${near}?` : takes}`;
  }
  return /does not take an argument/.test(message) ? `--${flag} takes no value` : `--${flag} needs a value`;
}
