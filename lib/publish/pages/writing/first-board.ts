import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Guide } from '../../../model/content/guide.ts';
import { readGuide } from '../../../read/read-guide.ts';
import { layoutsFolder } from '../../site/templates.ts';

/** The tutorial, which comes with the tool: its blocks are typed by a test as they stand. */
export function firstBoard(): Guide {
  const text = readFileSync(join(layoutsFolder, 'writing', 'first-board.md'), 'utf8');
  const { value, problems } = readGuide({ path: 'first-board.md', text });
  if (!value) throw new Error(`The tutorial can't be read: ${problems[0]?.message}`);
  return value;
}
