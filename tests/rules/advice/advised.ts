import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import type { AdvisedLine } from '../../../lib/model/finding.ts';
import { everyFinding, type Finding } from '../../../lib/model/finding.ts';
import { pointer } from '../../../lib/model/place.ts';
import { scalarText } from '../../../lib/read/yaml/write-value.ts';
import { readYaml, type YamlDocument } from '../../../lib/read/yaml/yaml.ts';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { jobOf } from '../../plan/plan-small-shop.ts';

/** All findings of the one job in some files, which must read without a problem. */
export function findingsIn(files: readonly SourceFile[]): readonly Finding[] {
  const job = jobOf(files);
  const { plan, remarks } = planKept(job);
  return everyFinding(judge(job, plan, remarks));
}

/** The files with lines written into them as a person would: over what stands there, else first in their section. */
export function withLines(files: readonly SourceFile[], lines: readonly AdvisedLine[]): SourceFile[] {
  return lines.reduce<SourceFile[]>(
    (made, { file, path, text }) =>
      made.map((one) => (one.path === file ? { ...one, text: withLine(one, path, text) } : one)),
    [...files],
  );
}

function withLine({ path: file, text: source }: SourceFile, path: string, text: string): string {
  const doc = readYaml(file, source).value;
  if (!doc) throw new Error(`${file} is no YAML.`);
  const keys = path
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
  const span = doc.span(path);
  if (span) return `${source.slice(0, span.start)}${text}${source.slice(span.end)}`;
  const depth = keys.findLastIndex((_, at) => doc.span(pointer(keys.slice(0, at))) !== null);
  const missing = keys.slice(Math.max(0, depth));
  return withEntry(doc, keys.slice(0, Math.max(0, depth)), missing, text);
}

/** A value behind names that a section does not have yet: `{ openings: [] }` in braces, else a line of its own. */
function withEntry(
  doc: YamlDocument,
  section: readonly string[],
  [key = '', ...below]: readonly string[],
  text: string,
): string {
  const { source } = doc;
  const value = below.reduceRight((inner, name) => `{ ${scalarText(name)}: ${inner} }`, text);
  const entry = `${scalarText(key)}: ${value}`;
  if (section.length === 0) return `${source.trimEnd()}\n${entry}\n`;
  const at = doc.span(pointer(section))?.start ?? 0;
  if (source[at] === '{') {
    const comma = /^\{\s*\}/.test(source.slice(at)) ? '' : ',';
    return `${source.slice(0, at + 1)} ${entry}${comma}${source.slice(at + 1)}`;
  }
  const indent = ' '.repeat(at - source.lastIndexOf('\n', at - 1) - 1);
  return `${source.slice(0, at)}${entry}\n${indent}${source.slice(at)}`;
}
