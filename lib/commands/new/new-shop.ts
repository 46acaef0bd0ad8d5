import { join } from 'node:path';
import type { SourceFile } from '../../model/content/source-file.ts';
import { layoutsFolder, projectFolder } from '../../publish/site/templates.ts';
import { readContent } from '../../read/read-content.ts';
import { type Effects, textsBelow } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { choicesOfWords } from './ask/choices.ts';
import { type Answers, type Asker, lineOf, linesOf } from './ask/question.ts';
import { tableQuestion } from './ask/table-question.ts';
import { openDraft } from './draft.ts';
import { keptAsking } from './kept-asking.ts';
import { shelfQuestions, withListed, writeShelf } from './new-shelf.ts';
import { refused } from './refused.ts';
import { shopSkeleton } from './shop-skeleton.ts';
import { shopTables, unitWords } from './shop-tables.ts';

const shopPath = 'content/shop.yaml';

/** What comes with the tool for a shop to begin with, of its own demo shop: parts that nobody makes, and guides. */
const fromDemo = /^content\/(?:parts|guides)\//;

/**
 * `rackleaf new shop`: makes `content/` in an empty folder, or goes on with one that it began. From then on it is the
 * shop's own: nothing else of the tool ever writes what it did not ask for, and a new version finds it as it was left.
 */
export async function newShop(effects: Effects, given: Answers, asker: Asker | null): Promise<ExitStatus> {
  const files = await beginning();
  const present = await effects.readContent();
  const own = ownFile(present, files);
  if (own !== null) return refused(effects, `there is a shop here already: ${own}`);
  const flags = await withListed(effects, given);
  if (typeof flags === 'string') return refused(effects, flags);
  const answers = await shopAnswers(effects, files, flags, asker);
  if (answers === null) return exitStatus.inputErrors;
  const hasSamples = lineOf(answers, 'samples') !== 'no';
  const { parts, problems } = readContent(files);
  // Its shop file is only written now, from the same catalogue.
  const wrong = problems.filter(({ where }) => where.file !== shopPath);
  if (wrong[0]) throw new Error(`What a shop begins with can't be read: ${wrong[0].where.file}.`);
  const text = shopSkeleton(
    { name: lineOf(answers, 'title'), units: lineOf(answers, 'units') === 'mm' ? 'millimetre' : 'inch' },
    parts,
  );
  const lacking = files
    .filter(({ path }) => hasSamples || fromDemo.test(path))
    .filter(({ path }) => !present.some((file) => file.path === path));
  // The shop file comes last: with it the shop is whole.
  for (const file of [...lacking, { path: shopPath, text }]) await effects.write(file.path, file.text);
  effects.out(shopPath);
  const isTold = linesOf(answers, 'thing').length > 0;
  const status = isTold ? await writeShelf(effects, answers) : exitStatus.done;
  await (await openDraft(effects, 'shop')).discard();
  const samples = hasSamples ? ', a vehicle and a job' : '';
  effects.tell(`a shop to begin with: parts${samples} that are invented, and the guides`);
  effects.tell(`next: ${isTold ? '' : 'rackleaf new shelf counts what lies there, then: '}rackleaf build`);
  return status;
}

/**
 * A file of a shop that is whole, or that was never begun here; null where there is none. A beginning that was cut short
 * left a file as it writes it and no shop file: it goes on, beside what someone wrote meanwhile.
 */
function ownFile(present: readonly SourceFile[], files: readonly SourceFile[]): string | null {
  const shop = present.find(({ path }) => path === shopPath);
  const begun = new Map(files.map(({ path, text }) => [path, text]));
  const isBegun = present.some(({ path, text }) => begun.get(path) === text);
  const own = shop ?? (isBegun ? undefined : present[0]);
  return own?.path ?? null;
}

async function beginning(): Promise<readonly SourceFile[]> {
  const demo = await textsBelow(projectFolder, join(projectFolder, 'content'));
  const starter = join(layoutsFolder, 'starter');
  return [
    ...demo.filter(({ path }) => fromDemo.test(path)),
    ...(await textsBelow(starter, join(starter, 'content'))),
  ];
}

/** Name and units of the shop, and what lies on its shelf already; null where they are wrong or were not told. */
async function shopAnswers(
  effects: Effects,
  files: readonly SourceFile[],
  given: Answers,
  asker: Asker | null,
): Promise<Answers | null> {
  const usual = { title: 'Your shop', units: 'inch', samples: 'yes' } as const;
  const questions = shopTables.map((table) =>
    tableQuestion(table, {
      fallback: () => usual[table.key],
      ...(table.key === 'units' && { choices: () => choicesOfWords(unitWords) }),
      ...(table.key === 'samples' && { choices: () => choicesOfWords(['yes', 'no']) }),
    }),
  );
  return keptAsking(effects, [...questions, ...shelfQuestions(files)], given, asker, {
    draft: 'shop',
    until: 'the shop is made',
    brokenOff: 'no shop is made',
    anew: given.list ? 'thing' : null,
  });
}
