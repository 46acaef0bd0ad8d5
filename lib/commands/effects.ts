import { mkdir, readdir, readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { SourceFile } from '../model/content/source-file.ts';
import { slashedPath } from '../publish/site/slashed-path.ts';
import type { Asker } from './new/ask/question.ts';
import type { Replaced } from './replace-text.ts';

/** The outside world, as the commands see it. Tests hand in one that only records. */
export interface Effects {
  /** The folder that holds `content/`. */
  readonly root: string;
  /** True where a person watches the messages: progress is told only then. */
  readonly watched: boolean;
  /** The most threads that plan and draw beside this one. Left out: one for each processor. */
  readonly threads?: number;
  /** The folder of kept results. Left out: that of the shop. */
  readonly keptIn?: string;
  out(text: string): void;
  tell(text: string): void;
  /** Who answers questions; null where nobody sits there. */
  asker(): Promise<Asker | null>;
  /** Every file below `content/`, with its path from the root. */
  readContent(): Promise<readonly SourceFile[]>;
  /** The date at this place, such as 2026-02-09. For what a person begins today; nothing computed asks for it. */
  today(): string;
  /** Puts a file in its place in one step, so that nobody sees half of it. A path that is not absolute starts at the root. */
  write(path: string, content: string | Uint8Array): Promise<void>;
  /** Puts a text in the place of the one that was read, unless the file was changed meanwhile or may only be read. */
  replaceText(path: string, before: string, after: string): Promise<Replaced>;
  /** Asks the person who watches what yes or no answers; null where nobody does. */
  confirm(question: string): Promise<boolean | null>;
}

/** Beside what is read, what was meant to be: reading tells of it. */
const texts = /\.(?:ya?ml|md|json)(?:\.txt)?$/i;

/** The effects of a real run. */
export function realEffects(root: string): Effects {
  return {
    root,
    watched: process.stderr.isTTY === true,
    out: (text) => process.stdout.write(`${text}\n`),
    tell: (text) => process.stderr.write(`${text}\n`),
    asker: async () => {
      if (process.stdin.isTTY !== true || process.stderr.isTTY !== true) return null;
      const { promptsAsker } = await import('./new/ask/prompts.ts');
      return promptsAsker({ input: process.stdin, output: process.stderr });
    },
    readContent: () => textsBelow(root, join(root, 'content')),
    // The Swedish way of writing a date is that of ISO 8601.
    today: () => new Date().toLocaleDateString('sv-SE'),
    write: async (path, content) => {
      const full = resolve(root, path);
      await mkdir(dirname(full), { recursive: true });
      const { putFile } = await import('./put-file.ts');
      await putFile(full, content);
    },
    replaceText: async (path, before, after) => {
      const { replaceText } = await import('./replace-text.ts');
      return replaceText(resolve(root, path), before, after);
    },
    confirm: async (question) => {
      const { confirm } = await import('./confirm.ts');
      return confirm(question);
    },
  };
}

/** Every text below a folder, by its path from the root with forward slashes. */
export async function textsBelow(root: string, folder: string): Promise<SourceFile[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const files = entries.filter((entry) => entry.isFile() && texts.test(entry.name));
  const paths = files.map((entry) => join(entry.parentPath, entry.name)).sort();
  return Promise.all(
    paths.map(async (path) => ({
      path: slashedPath(root, path),
      text: await readFile(path, 'utf8'),
    })),
  );
}
