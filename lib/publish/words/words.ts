import { type Level, levelSchema } from '../../model/finding.ts';
import type { Source } from '../../model/findings/source.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { Mark } from '../../model/trace.ts';
import { type FilterType, filterNames } from '../../model/vocabulary.ts';

/** A name of the plan as a reader sees it: `fuse-holder` becomes `Fuse holder`. */
export function spelled(name: string): string {
  return headed(spelledWithin(name));
}

/** Words as they stand at the head of a line: with a capital. */
export function headed(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The same within a sentence; a filter is called after people there, too. */
export function spelledWithin(name: string): string {
  return isFilter(name) ? filterNames[name] : name.replaceAll('-', ' ');
}

const isFilter = (name: string): name is FilterType => Object.hasOwn(filterNames, name);

/** Words of the levels; a symbol never stands alone. */
export const levelWords = {
  stop: 'Stop',
  caution: 'Caution',
  note: 'Note',
} as const satisfies Record<Level, string>;

/** What a level asks of the reader. */
export const levelMeanings = {
  stop: 'The job may not be released until these are mended.',
  caution: 'Read these before you begin.',
  note: 'Good to know.',
} as const satisfies Record<Level, string>;

export const levelOrder: readonly Level[] = levelSchema.options;

/** What a mark on a source means, in words. */
export const markWords = {
  cp: 'common practice',
  mem: 'quoted from memory, confirm before relying on it',
} as const satisfies Record<Mark, string>;

/** A source with what its mark means, where it does not say so itself. */
export function sourceText({ source, mark }: Source): string {
  return mark === undefined || source.startsWith(markWords[mark]) ? source : `${source} (${markWords[mark]})`;
}

export const statusWords = {
  draft: 'Draft',
  released: 'Released',
  installed: 'Installed',
  superseded: 'Superseded',
} as const satisfies Record<BuildPlan['job']['status'], string>;

/** Words joined as a sentence has them: `a`, `a and b`, `a, b and c`. */
export function joined(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** `1 job`, `2 jobs`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
