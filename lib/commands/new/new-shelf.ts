import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Part } from '../../model/kinds/index.ts';
import { problemText } from '../../model/problem.ts';
import { readCsv } from '../../read/csv-rows.ts';
import { contentFiles, readCatalogue, readContent } from '../../read/read-content.ts';
import { stockEdits } from '../../read/stock/stock-edits.ts';
import { type Edit, splice } from '../../read/yaml/splice.ts';
import { readYaml, type YamlDocument } from '../../read/yaml/yaml.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { writeTold } from '../write-shown.ts';
import { choicesOfWords } from './ask/choices.ts';
import { type Answers, type Asker, lineOf, linesOf, type Question } from './ask/question.ts';
import { tableQuestion } from './ask/table-question.ts';
import { openDraft } from './draft.ts';
import { keptAsking } from './kept-asking.ts';
import type { Given } from './new-file.ts';
import { anyPartFile } from './part/any-part-file.ts';
import { writtenPart } from './part/like/part-like.ts';
import { refused } from './refused.ts';
import { type ShelfAround, type Shelved, shelfText, shelved } from './shelf/shelf-parts.ts';
import { shelfTables } from './shelf/shelf-tables.ts';

const shopPath = 'content/shop.yaml';

/** `rackleaf new shelf`: parts that the catalogue lacks and the stock of all, from one line a thing. */
export async function newShelf(effects: Effects, given: Given, asker: Asker | null): Promise<ExitStatus> {
  const files = await effects.readContent();
  if (!countedShop(files))
    return refused(
      effects,
      `${shopPath} can't be read: rackleaf new shop writes one, rackleaf check tells its errors`,
    );
  const flags = await withListed(effects, given.answers);
  if (typeof flags === 'string') return refused(effects, flags);
  const answers = await keptAsking(effects, shelfQuestions(files), flags, asker, {
    draft: 'shelf',
    until: 'the shelf is written',
    brokenOff: 'nothing of the shelf is written',
    anew: given.answers.list ? 'thing' : null,
  });
  if (answers === null) return exitStatus.inputErrors;
  if (linesOf(answers, 'thing').length === 0)
    return refused(effects, 'nothing is told of the shelf, and nothing is written');
  const status = await writeShelf(effects, answers);
  // What was typed is kept until it lies in the files.
  await (await openDraft(effects, 'shelf')).discard();
  return status;
}

/** Writes what lies on the shelf of a shop that is there, as its questions were answered. */
export async function writeShelf(effects: Effects, answers: Answers): Promise<ExitStatus> {
  const files = await effects.readContent();
  const shop = countedShop(files);
  if (!shop) throw new Error('The shelf of a shop that can not be read is not written.');
  const shelf = shelfOf(linesOf(answers, 'thing'), surroundings(files));
  return written(effects, { files, ...shop, shelf, isWhole: lineOf(answers, 'whole') === 'yes' });
}

/** The shop file whose stock is written; null where it can't be read. */
function countedShop(files: readonly SourceFile[]): Pick<Counted, 'shopFile' | 'doc'> | null {
  const shopFile = files.find(({ path }) => path === shopPath);
  const doc = shopFile ? readYaml(shopFile.path, shopFile.text).value : null;
  return shopFile && doc && readContent(files).shop !== null ? { shopFile, doc } : null;
}

/** Answers with the lines of a list before those that are told one by one; as a text why the list can't be read. */
export async function withListed(
  effects: Effects,
  { list = [], ...own }: Answers,
): Promise<Answers | string> {
  const listed = await linesOfList(effects, list);
  if (typeof listed === 'string') return listed;
  return listed.length > 0 ? { ...own, thing: [...listed, ...(own.thing ?? [])] } : own;
}

/** The lines of a list, those without a word and remarks left out; as a text why it can't be read. */
async function linesOfList(
  { root }: Effects,
  [path]: readonly string[],
): Promise<readonly string[] | string> {
  if (path === undefined) return [];
  const text = await readFile(resolve(root, path), 'utf8').catch(() => null);
  if (text === null) return `there is no file ${path} that can be read`;
  return text.split(/\r?\n/).flatMap((line) => {
    const thing = line.trim();
    return thing === '' || thing.startsWith('#') ? [] : [thing];
  });
}

function surroundings(files: readonly SourceFile[]): ShelfAround {
  const sorted = contentFiles(files);
  const catalogue = readCatalogue(sorted);
  const any = anyPartFile(files, catalogue);
  return {
    parts: catalogue.parts.parts,
    written: (id) => writtenPart(sorted.parts, id),
    problems: (text) => any.problems('content/parts/on-the-shelf.yaml', text, {}),
  };
}

/** Questions of the shelf of a shop with these files: each line is read beside those before it. */
export function shelfQuestions(files: readonly SourceFile[]): readonly Question[] {
  const around = surroundings(files);
  return shelfTables.map((table) =>
    tableQuestion(
      table,
      table.key === 'thing'
        ? {
            thing: (row) => row.trim().replace(/\s+x\s*\d+$/, ''),
            fault: (_row, answers, line) => {
              const found = shelved(line, withMade(linesOf(answers, 'thing'), around));
              return typeof found === 'string' ? found : null;
            },
          }
        : {
            needless: (answers) =>
              linesOf(answers, 'thing').length > 0 ? null : 'belongs to what is told by --thing',
            fallback: () => 'no',
            choices: () => choicesOfWords(['no', 'yes']),
          },
    ),
  );
}

/** The catalogue with the parts that lines before made. */
function withMade(lines: readonly string[], around: ShelfAround): ShelfAround {
  const made = shelfOf(lines, around).filter((one) => one.made !== null);
  return { ...around, parts: { ...around.parts, ...partsOf(made) } };
}

function partsOf(made: readonly Shelved[]): Readonly<Record<string, Part>> {
  if (made.length === 0) return {};
  return readCatalogue({ shop: [], parts: [{ path: 'content/parts/made.yaml', text: shelfText(made) }] })
    .parts.parts;
}

/** All that lines tell; what several tell of one part is added up. */
function shelfOf(lines: readonly string[], around: ShelfAround): readonly Shelved[] {
  const shelf = new Map<string, Shelved>();
  let parts = around.parts;
  for (const line of lines) {
    const one = shelved(line, { ...around, parts });
    if (typeof one === 'string')
      throw new Error(`A line of the shelf that was found right is not: it ${one}.`);
    const before = shelf.get(one.id);
    const pieces = before?.count.pieces ?? null;
    const count = {
      pieces: pieces === null ? one.count.pieces : pieces + (one.count.pieces ?? 0),
      reels: [...(before?.count.reels ?? []), ...one.count.reels],
    };
    shelf.set(one.id, { ...one, count, made: before?.made ?? one.made });
    if (one.made) parts = { ...parts, ...partsOf([one]) };
  }
  return [...shelf.values()];
}

interface Counted {
  readonly files: readonly SourceFile[];
  readonly shopFile: SourceFile;
  readonly doc: YamlDocument;
  readonly shelf: readonly Shelved[];
  readonly isWhole: boolean;
}

/** Writes the new parts first: a stock that names a part which is not there could not be read. */
async function written(
  effects: Effects,
  { files, shopFile, doc, shelf, isWhole }: Counted,
): Promise<ExitStatus> {
  const made = shelf.filter((one) => one.made !== null);
  const partsPath = freePath(files);
  const partsText = shelfText(made);
  const withParts = made.length === 0 ? files : [...files, { path: partsPath, text: partsText }];
  const text = splice(shopFile.text, isWhole ? wholeEdits(doc, shelf) : addedEdits(withParts, doc, shelf));
  if (typeof text !== 'string') throw new Error(`The stock can not be written: ${text.fault}.`);
  const { problems } = readContent(
    withParts.map((file) => (file.path === shopPath ? { path: shopPath, text } : file)),
  );
  const wrong = problems.filter(({ where }) => where.file === shopPath || where.file === partsPath);
  if (wrong.length > 0)
    throw new Error(`The shelf can't be read back.\n${wrong.map(problemText).join('\n')}`);
  if (made.length > 0) {
    await effects.write(partsPath, partsText);
    effects.out(partsPath);
  }
  for (const { id, made: from } of made)
    effects.tell(
      `new: ${id}${from && from.taken.length > 0 ? ` (${from.taken.join(', ')} as ${from.from})` : ''}`,
    );
  return writeTold(effects, { path: shopPath, before: shopFile.text, after: text });
}

/** A file of parts of the shelf is never written over: the next one has a number. */
function freePath(files: readonly SourceFile[]): string {
  const taken = new Set(files.map(({ path }) => path));
  for (let at = 1; ; at++) {
    const path = `content/parts/on-the-shelf${at === 1 ? '' : `-${at}`}.yaml`;
    if (!taken.has(path)) return path;
  }
}

/** True for what has a row in the stock: of a reel that is known and not there nothing is left to count. */
const lies = ({ count }: Shelved): boolean => count.pieces !== null || count.reels.length > 0;

function addedEdits(
  files: readonly SourceFile[],
  doc: YamlDocument,
  shelf: readonly Shelved[],
): readonly Edit[] {
  const rows = shelf
    .filter(lies)
    .map(({ id, count }) => `${id},${count.pieces ?? ''},${count.reels.join('; ')}`);
  const table = readCsv('the shelf', ['part,pieces,reels', ...rows].join('\n'));
  const { shop, parts } = readContent(files);
  if ('where' in table || !shop) throw new Error('The shelf can not be read as a table.');
  const { edits, problems } = stockEdits('the shelf', table, doc, { shop, parts });
  if (problems[0]) throw new Error(`The shelf can't be written: ${problemText(problems[0])}`);
  return edits;
}

/** The whole stock anew, counted: the mark that it is not goes with it. */
function wholeEdits(doc: YamlDocument, shelf: readonly Shelved[]): readonly Edit[] {
  const lines = shelf
    .filter(lies)
    .map(({ id, count }) =>
      count.pieces === null
        ? `  ${id}: { reels: [${count.reels.join(', ')}] }`
        : `  ${id}: { pieces: ${count.pieces} }`,
    );
  const stock = doc.span('/stock');
  const own = `stock:\n${lines.join('\n')}`;
  const { source } = doc;
  const begins = source.search(/^stock:/m);
  const mark = /^stock-counted:.*\n/m.exec(source);
  return [
    ...(mark ? [{ start: mark.index, end: mark.index + mark[0].length, text: '' }] : []),
    stock && begins >= 0
      ? { start: begins, end: stock.end, text: own }
      : { start: source.length, end: source.length, text: `${source.endsWith('\n') ? '' : '\n'}${own}\n` },
  ];
}
