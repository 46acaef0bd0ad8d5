import { createInterface } from 'node:readline/promises';

/** Asks the person at this terminal what yes or no answers; null where nobody sits there. */
export async function confirm(question: string): Promise<boolean | null> {
  const { stdin: input, stderr: output } = process;
  if (!input.isTTY || !output.isTTY) return null;
  const lines = createInterface({ input, output });
  try {
    return /^y(?:es)?$/i.test((await lines.question(`${question} [y/N] `)).trim());
  } finally {
    lines.close();
  }
}
