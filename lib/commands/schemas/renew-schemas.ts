import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { SourceFile } from '../../model/content/source-file.ts';
import { contentFiles } from '../../read/read-content.ts';
import { withCrew } from '../crew/with-crew.ts';
import type { Effects } from '../effects.ts';
import { shopSchemas } from '../kept/schema-steps.ts';
import { outsideText } from '../told/failure-text.ts';

/**
 * Writes schemas into the shop where another text stands, or none. They only help those who write its files: where they
 * can't be written that is told, and nothing else comes of it.
 */
export async function renewSchemas(effects: Effects, schemas: readonly SourceFile[]): Promise<void> {
  try {
    for (const { path, text } of schemas) {
      const stands = await readFile(join(effects.root, path), 'utf8').catch(() => null);
      if (stands !== text) await effects.write(path, text);
    }
  } catch (error) {
    effects.tell(`the schemas for editors stay as they were: ${outsideText(error)}`);
  }
}

/** Renews the schemas of a shop as it stands. */
export async function renewAllSchemas(effects: Effects): Promise<void> {
  const files = contentFiles(await effects.readContent());
  const made = await withCrew(effects, async (crew) => shopSchemas(files, crew.read, crew.keep));
  await renewSchemas(effects, made);
}
