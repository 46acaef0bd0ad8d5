import type { Asked, Asker } from './question.ts';
import { Interrupted } from './question.ts';
import { wrapped } from './wrapped.ts';

/** What a person is asked through. */
export interface Terminal {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
}

/** How wide it is as something is said: a window is made narrower meanwhile. What tells no width is left to break lines itself. */
function columnsOf({ output }: Terminal): number {
  return 'columns' in output && typeof output.columns === 'number' && output.columns > 0
    ? output.columns
    : Number.POSITIVE_INFINITY;
}

/** More than these are searched by typing. */
const mostAtAGlance = 8;

/** An asker at a terminal. What is wrong with an answer stands below it until it is mended. */
export async function promptsAsker(terminal: Terminal): Promise<Asker> {
  // Loaded only where a person sits there.
  const { input, search, select } = await import('@inquirer/prompts');
  const answer = ({ message, choices, fallback, fault }: Asked): Promise<string> => {
    const validate = (line: string) => fault(line) ?? true;
    if (!choices) {
      const rest = fallback === null || fallback === '' ? {} : { default: fallback };
      return input({ message, validate, ...rest }, terminal);
    }
    const named = choices.map(({ value, says }) => ({ value, name: says }));
    if (choices.length <= mostAtAGlance)
      return select({ message, choices: named, ...(fallback !== null && { default: fallback }) }, terminal);
    const source = (typed: string | undefined) =>
      named.filter(({ name }) => name.toLowerCase().includes((typed ?? '').toLowerCase()));
    return search({ message, source, validate }, terminal);
  };
  return {
    say: (text) => terminal.output.write(`${wrapped(text, columnsOf(terminal))}\n`),
    ask: async (asked) => {
      try {
        return await answer(asked);
      } catch (error) {
        if (error instanceof Error && ['ExitPromptError', 'AbortPromptError'].includes(error.name))
          throw new Interrupted();
        throw error;
      }
    },
  };
}
