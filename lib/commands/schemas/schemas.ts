import { schemaLine, schemaLineEdit } from '../../export/schemas/schema-line.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import { splice } from '../../read/yaml/splice.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { notReplacedText } from '../replace-text.ts';
import { renewAllSchemas } from './renew-schemas.ts';

/** `rackleaf schemas`: renews the schemas for editors, and names them in the first line of the files; shown first. */
export async function schemas(effects: Effects, yes: boolean): Promise<ExitStatus> {
  await renewAllSchemas(effects);
  const lines = (await effects.readContent()).flatMap((file) => lineFor(file) ?? []);
  for (const { path, line } of lines) effects.out(`${path}:1:1: + ${line}`);
  if (lines.length === 0) {
    effects.tell('no file lacks the line that names its schema');
    return exitStatus.done;
  }
  const wanted = yes || (await effects.confirm(`Write ${lines.length === 1 ? 'this line' : 'these lines'}?`));
  if (wanted === null) effects.tell('nothing is written; --yes writes it');
  return wanted === true ? written(effects, lines) : exitStatus.done;
}

/** A file that does not name its schema yet, and as it is once it does. */
interface NamingLine {
  readonly path: string;
  readonly line: string;
  readonly before: string;
  readonly after: string;
}

function lineFor(file: SourceFile): NamingLine | null {
  const { path, text: before } = file;
  const [line, edit] = [schemaLine(path), schemaLineEdit(file)];
  if (line === null || edit === null) return null;
  const after = splice(before, [edit]);
  if (typeof after !== 'string') throw new Error(`The schema of ${path} can not be named: ${after.fault}.`);
  return { path, line, before, after };
}

async function written(effects: Effects, lines: readonly NamingLine[]): Promise<ExitStatus> {
  let status: ExitStatus = exitStatus.done;
  for (const { path, before, after } of lines) {
    const replaced = await effects.replaceText(path, before, after);
    if (replaced === 'written') effects.tell(`${path} written`);
    else {
      effects.tell(notReplacedText(path, replaced));
      status = replaced === 'changed' ? exitStatus.inputErrors : exitStatus.missing;
    }
  }
  return status;
}
