import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { realEffects } from '../../lib/commands/effects.ts';
import type { ExitStatus } from '../../lib/commands/exit-status.ts';
import type { Asker } from '../../lib/commands/new/ask/question.ts';
import { runCommand } from '../../lib/commands/run-command.ts';
import { isLongRun } from '../long-run.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { keptBetweenTests } from '../shops/test-crew.ts';

/** A thread takes seconds to start, and `crew.test.ts` holds that it answers the same: the long run starts them here too. */
const threads = isLongRun ? {} : { threads: 0 };

/** What one command line did: its exit status, what it gave out, and what it told. */
export interface Ran {
  readonly status: ExitStatus;
  readonly out: string;
  readonly told: string;
}

/** A folder of its own with nothing in it, for commands to run in. */
export class EmptyFolder {
  readonly root = mkdtempSync(join(tmpdir(), 'shop-'));
  /** Where its commands keep their results: with those of other shops of tests, or, where null, in the folder itself. */
  readonly keptIn: string | null = keptBetweenTests;

  read(path: string): string {
    return readFileSync(join(this.root, path), 'utf8');
  }

  write(path: string, text: string): void {
    const full = join(this.root, path);
    mkdirSync(dirname(full), { recursive: true });
    writeFileSync(full, text);
  }

  /** Exchanges one text of a file. */
  change(path: string, found: string, instead: string): void {
    const text = this.read(path);
    if (text.split(found).length !== 2) throw new Error(`${path} has not just one "${found}".`);
    this.write(
      path,
      text.replace(found, () => instead),
    );
  }

  remove(): void {
    rmSync(this.root, { recursive: true });
  }

  /** Runs a command line in the folder with nobody at the terminal, recording what it says. */
  run(...line: readonly string[]): Promise<Ran> {
    return this.answered(null, ...line);
  }

  /** Runs a command line in the folder with somebody there who answers. */
  async answered(asker: Asker | null, ...line: readonly string[]): Promise<Ran> {
    const out: string[] = [];
    const told: string[] = [];
    const status = await runCommand(line, this.root, {
      ...realEffects(this.root),
      watched: false,
      ...threads,
      ...(this.keptIn !== null && { keptIn: this.keptIn }),
      asker: async () => asker,
      out: (text) => out.push(text),
      tell: (text) => told.push(text),
    });
    return { status, out: out.join('\n'), told: told.join('\n') };
  }
}

/** The small shop in a folder of its own. */
export class ShopFolder extends EmptyFolder {
  constructor(...changes: readonly Change[]) {
    super();
    for (const { path, text } of smallShop(...changes)) this.write(path, text);
  }
}

/** The small shop in a folder of its own, with what is kept in it as well: for tests of that. */
export class ShopWithOwnStore extends ShopFolder {
  override readonly keptIn = null;
}

/** Changes of the small shop that make the job stop: a fuse that is larger than its conductor may be behind. */
export const stopped: Change = [
  'content/jobs/demo.yaml',
  'holder-a, in: bay',
  'holder-a, in: bay, fuse: 200 A',
];
/** A change that makes the input wrong. */
export const misspelt: Change = ['content/jobs/demo.yaml', 'to: amp.REM', 'to: amp.RME'];
