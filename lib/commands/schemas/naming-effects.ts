import { schemaLineEdit } from '../../export/schemas/schema-line.ts';
import { splice } from '../../read/yaml/splice.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';
import { renewAllSchemas } from './renew-schemas.ts';

/** Does a command that begins files of a shop: each names its schema, which is there once the command is done. */
export async function withSchemasNamed(
  effects: Effects,
  run: (own: Effects) => Promise<ExitStatus> | ExitStatus,
): Promise<ExitStatus> {
  const status = await run(namingSchemas(effects));
  if (status === exitStatus.done) await renewAllSchemas(effects);
  return status;
}

/** Effects that name its schema in the first line of each file of the shop that they write. */
function namingSchemas(effects: Effects): Effects {
  return {
    ...effects,
    write: (path, content) =>
      effects.write(path, typeof content === 'string' ? withSchemaNamed(path, content) : content),
  };
}

function withSchemaNamed(path: string, text: string): string {
  const edit = schemaLineEdit({ path, text });
  const named = edit === null ? text : splice(text, [edit]);
  return typeof named === 'string' ? named : text;
}
