import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { SourceFile } from '../model/content/source-file.ts';
import { problemText } from '../model/problem.ts';
import { tellingColumns } from '../model/shelf/stock-table.ts';
import { readCsv } from '../read/csv-rows.ts';
import { readContent } from '../read/read-content.ts';
import { stockEdits } from '../read/stock/stock-edits.ts';
import { splice } from '../read/yaml/splice.ts';
import { readYaml } from '../read/yaml/yaml.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { writeTold } from './write-shown.ts';

const shopPath = 'content/shop.yaml';

/** `rackleaf import TABLE`: brings stock and prices of the shop file to what a table counts; shown first, written with --write. */
export async function importStock(effects: Effects, path: string, write: boolean): Promise<ExitStatus> {
  const source = await readFile(resolve(effects.root, path), 'utf8').catch(() => null);
  if (source === null) return refuse(effects, `there is no file ${path} that can be read`);
  const files = await effects.readContent();
  const shopFile = files.find((file) => file.path === shopPath);
  const { shop, parts, problems: ofContent } = readContent(files);
  const doc = shopFile ? readYaml(shopFile.path, shopFile.text).value : null;
  const isWhole = ofContent.every(({ where }) => where.file !== shopPath);
  if (!shop || !shopFile || !doc || !isWhole)
    return refuse(effects, `${shopPath} has errors: mend them first`);
  const table = readCsv(path, source);
  if ('where' in table) {
    effects.tell(problemText(table));
    return exitStatus.inputErrors;
  }
  if (!table.titles.includes('part') || !tellingColumns.some((title) => table.titles.includes(title)))
    return refuse(
      effects,
      `${path}:1:1: the first row names the columns: part, and any of ${tellingColumns.join(', ')}`,
    );
  const { changes, edits, problems } = stockEdits(path, table, doc, { shop, parts });
  for (const problem of problems) effects.tell(problemText(problem));
  for (const { part, before, after } of changes)
    effects.out(before === null ? `+ ${part}: ${after}` : `  ${part}: ${before} -> ${after}`);
  const left = problems.length > 0 ? exitStatus.inputErrors : exitStatus.done;
  if (changes.length === 0) {
    effects.tell('nothing changes');
    return left;
  }
  if (!write) {
    effects.tell(
      `${changes.length} ${changes.length === 1 ? 'value' : 'values'} of ${table.rows.length} rows would change in ${shopPath}; --write writes them`,
    );
    return left;
  }
  const text = splice(shopFile.text, edits);
  if (typeof text !== 'string') throw new Error(`The stock can not be written: ${text.fault}.`);
  checkReadable(files, text);
  const status = await writeTold(effects, { path: shopPath, before: shopFile.text, after: text });
  return status === exitStatus.done ? left : status;
}

/** What could not be read back would be a bug, and is not written. */
function checkReadable(files: readonly SourceFile[], text: string): void {
  const { problems } = readContent(files.map((file) => (file.path === shopPath ? { ...file, text } : file)));
  const wrong = problems.filter(({ where }) => where.file === shopPath);
  if (wrong.length > 0)
    throw new Error(
      `${shopPath} could not be read with what is imported.\n${wrong.map(problemText).join('\n')}`,
    );
}

function refuse(effects: Effects, message: string): ExitStatus {
  effects.tell(`import: ${message}`);
  return exitStatus.inputErrors;
}
