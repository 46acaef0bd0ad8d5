import { z } from 'zod';
import type { Guide } from '../model/content/guide.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import { text } from '../model/fields.ts';
import type { Read } from '../model/problem.ts';
import { shape } from './schema/shape.ts';
import { readYaml } from './yaml/yaml.ts';

const frontMatterSchema = z.strictObject({
  title: text('Setting gain with a meter'),
  summary: text('What to read on the meter, and when to stop.'),
});

/** A guide: front matter between two lines of `---`, then Markdown. */
export function readGuide(file: SourceFile): Read<Guide | null> {
  const match = /^---\r?\n([\s\S]*?)\r?\n---\r?\n/.exec(file.text);
  if (!match) {
    const where = { file: file.path, line: 1, column: 1, path: '' };
    const message = 'the guide has no front matter';
    return {
      value: null,
      problems: [{ where, message, expected: 'title and summary between two lines of ---' }],
    };
  }
  // A blank first line in place of the dashes keeps every line number as it is in the file.
  const { value: document, problems } = readYaml(file.path, `\n${match[1] ?? ''}`);
  if (!document) return { value: null, problems };
  const front = shape(document, frontMatterSchema);
  if (!front.value) return { value: null, problems: [...problems, ...front.problems] };
  const slug = file.path.replace(/^.*\//, '').replace(/\.md$/, '');
  return { value: { slug, ...front.value, body: file.text.slice(match[0].length) }, problems };
}
