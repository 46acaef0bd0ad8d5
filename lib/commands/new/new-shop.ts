import { join } from 'node:path';
import type { SourceFile } from '../../model/content/source-file.ts';
import { layoutsFolder, projectFolder } from '../../publish/site/templates.ts';
import { readContent } from '../../read/read-content.ts';
import { type Effects, textsBelow } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { answersOf } from './ask/answers-of.ts';
import { choicesOfWords } from './ask/choices.ts';
import { type Answers, type Asker, Interrupted, lineOf } from './ask/question.ts';
import { tableQuestion } from './ask/table-question.ts';
import { refused } from './refused.ts';
import { shopSkeleton } from './shop-skeleton.ts';
import { shopTables, unitWords } from './shop-tables.ts';

/** What comes with the tool for a shop to begin with, of its own demo shop: parts that nobody makes, and guides. */
const fromDemo = /^content\/(?:parts|guides)\//;

/**
 * `rackleaf new shop`: makes `content/` in an empty folder. From then on it is the shop's own: nothing else of the
 * tool ever writes what it did not ask for, and a new version finds it as it was left.
 */
export async function newShop(effects: Effects, given: Answers, asker: Asker | null): Promise<ExitStatus> {
  const files = await beginning();
  const own = ownFile(await effects.readContent(), files);
  if (own !== null) return refused(effects, `there is a shop here already: ${own}`);
  const answers = await shopAnswers(effects, given, asker);
  if (answers === null) return exitStatus.inputErrors;
  const { parts, problems } = readContent(files);
  // Its shop file is only written now, from the same catalogue.
  const wrong = problems.filter(({ where }) => where.file !== 'content/shop.yaml');
  if (wrong[0]) throw new Error(`What a shop begins with can't be read: ${wrong[0].where.file}.`);
  const text = shopSkeleton(
    { name: lineOf(answers, 'title'), units: lineOf(answers, 'units') === 'mm' ? 'millimetre' : 'inch' },
    parts,
  );
  // The shop file comes last: with it the shop is whole.
  for (const file of [...files, { path: 'content/shop.yaml', text }])
    await effects.write(file.path, file.text);
  effects.out('content/shop.yaml');
  effects.tell('a shop to begin with: parts, a vehicle and a job that are invented, and the guides');
  effects.tell('name the shop and count its stock in content/shop.yaml, then: rackleaf build');
  return exitStatus.done;
}

/** A file that someone wrote; null where there are none but those of a beginning that was cut short, which is done again. */
function ownFile(present: readonly SourceFile[], files: readonly SourceFile[]): string | null {
  const begun = new Map(files.map(({ path, text }) => [path, text]));
  return present.find(({ path, text }) => begun.get(path) !== text)?.path ?? null;
}

async function beginning(): Promise<readonly SourceFile[]> {
  const demo = await textsBelow(projectFolder, join(projectFolder, 'content'));
  const starter = join(layoutsFolder, 'starter');
  return [
    ...demo.filter(({ path }) => fromDemo.test(path)),
    ...(await textsBelow(starter, join(starter, 'content'))),
  ];
}

/** Name and units of the shop; null where they are wrong or were not told. */
async function shopAnswers(effects: Effects, given: Answers, asker: Asker | null): Promise<Answers | null> {
  const usual = { title: 'Your shop', units: 'inch' } as const;
  const questions = shopTables.map((table) =>
    tableQuestion(table, {
      fallback: () => usual[table.key],
      ...(table.key === 'units' && { choices: () => choicesOfWords(unitWords) }),
    }),
  );
  try {
    const { answers, faults } = await answersOf(questions, given, asker);
    if (faults.length === 0) return answers;
    refused(effects, ...faults);
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    refused(effects, 'no shop is made');
  }
  return null;
}
