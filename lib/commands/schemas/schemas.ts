import { schemaLine, schemaLineEdit } from '../../export/schemas/schema-line.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import { splice } from '../../read/yaml/splice.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { type FileChange, isWanted, writeTold } from '../write-shown.ts';
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
  const question = `Write ${lines.length === 1 ? 'this line' : 'these lines'}?`;
  return (await isWanted(effects, yes, question)) ? written(effects, lines) : exitStatus.done;
}

/** A file that does not name its schema yet, and as it is once it does. */
interface NamingLine extends FileChange {
  readonly line: string;
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
  for (const line of lines) {
    const own = await writeTold(effects, line);
    if (own !== exitStatus.done) status = own;
  }
  return status;
}
