import { frontMatterSchema, type Guide } from '../model/content/guide.ts';
import type { SourceFile } from '../model/content/source-file.ts';
import { fileId } from '../model/fields.ts';
import { houseRuleNames, isHouseRuleName } from '../model/house-rules.ts';
import { rulesNamed } from '../model/printed/rule-figures.ts';
import type { Problem, Read } from '../model/problem.ts';
import { encodingFault } from './encoding.ts';
import { remedyFor } from './report.ts';
import { shape } from './schema/shape.ts';
import { lineFinder } from './yaml/positions.ts';
import { readYaml } from './yaml/yaml.ts';

/** A guide: front matter between two lines of `---`, then Markdown. */
export function readGuide(file: SourceFile): Read<Guide | null> {
  const where = { file: file.path, line: 1, column: 1, path: '' };
  const slug = file.path.replace(/^.*\//, '').replace(/\.md$/, '');
  const named = fileId.safeParse(slug);
  if (!named.success) {
    const message = `the name of the file, "${slug}", ${named.error.issues[0]?.message ?? 'is not an id'}`;
    return { value: null, problems: [{ where, message }] };
  }
  const encoding = encodingFault(file.text);
  if (encoding) {
    const at = lineFinder(file.text)(encoding.offset);
    return { value: null, problems: [{ where: { ...where, ...at }, message: encoding.message }] };
  }
  // Editors of some systems end lines otherwise, and put a mark of the encoding before the first.
  const text = file.text.replace(/^\uFEFF/, '').replaceAll('\r\n', '\n');
  const match = /^---\n([\s\S]*?)\n---\n/.exec(text);
  if (!match) {
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
  const guide = { slug, ...front.value, body: text.slice(match[0].length) };
  return { value: guide, problems: [...problems, ...unknownRules(file.path, text)] };
}

/** Names in braces that no house rule has: their figures would stay out of the text. */
function unknownRules(file: string, text: string): Problem[] {
  return rulesNamed(text).flatMap(({ name, at }): Problem[] => {
    if (isHouseRuleName(name)) return [];
    const before = text.slice(0, at).split('\n');
    const where = { file, line: before.length, column: (before.at(-1) ?? '').length + 1, path: '' };
    return [
      {
        where,
        message: `there is no house rule "${name}"`,
        expected:
          'the name of a house rule in braces, such as {ground-lead}, for the figure that the shop sets',
        remedy: remedyFor(name, houseRuleNames),
      },
    ];
  });
}
