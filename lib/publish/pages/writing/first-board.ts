import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Guide } from '../../../model/content/guide.ts';
import { readGuide } from '../../../read/read-guide.ts';
import { layoutsFolder } from '../../site/templates.ts';

/** Its part of the address. */
export const firstBoardSlug = 'first-board';

/** The tutorial, which comes with the tool: its blocks are typed by a test as they stand. */
export function firstBoard(): Guide {
  const path = `${firstBoardSlug}.md`;
  const text = readFileSync(join(layoutsFolder, 'writing', path), 'utf8');
  const { value, problems } = readGuide({ path, text });
  if (!value) throw new Error(`The tutorial can't be read: ${problems[0]?.message}`);
  return value;
}
