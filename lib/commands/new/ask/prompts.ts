import type { Asked, Asker } from './question.ts';
import { Interrupted } from './question.ts';

/** What a person is asked through. */
export interface Terminal {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
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
    say: (text) => terminal.output.write(`${text}\n`),
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
