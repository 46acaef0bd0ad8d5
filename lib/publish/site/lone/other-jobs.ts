import type { PartPromisedTo } from '../../../model/content/promised.ts';

/** A job that a lone one may not tell of. */
export interface OtherJob {
  readonly id: string;
  /** What else tells of it: its title, its customer. None where its file can't be read. */
  readonly names: readonly string[];
}

/** What stands for the names of jobs that are not told of. */
export const otherJobs = 'other jobs';

/** To whom something is promised, with all that goes to others than one job in one amount, and no name. */
export function unnamedTo(id: string, to: readonly PartPromisedTo[]): PartPromisedTo[] {
  const others = to.filter(({ job }) => job !== id);
  const quantity = others.reduce((sum, one) => sum + one.quantity, 0);
  const own = to.filter(({ job }) => job === id);
  return others.length === 0 ? own : [...own, { job: otherJobs, revision: '', quantity }];
}

/** To whom something is promised, as pages say it: a revision of a job, or other jobs that are not named. */
export function promisedName({ job, revision }: Pick<PartPromisedTo, 'job' | 'revision'>): string {
  return revision === '' ? job : `${job}, revision ${revision}`;
}

/** Texts of a site that tells of one job alone. */
export interface WithoutNames {
  /** A text that named revisions of other jobs, as what is promised to them does, without these names. */
  readonly text: (text: string) => string;
  /** True where one of the texts names another job or its customer. */
  readonly isNamedIn: (texts: readonly string[]) => boolean;
  /** The same with more jobs that are not told of: a frozen plan may name one that is gone since. */
  readonly also: (ids: readonly string[]) => WithoutNames;
}

/** Texts without the names of jobs other than one. */
export function withoutNames(id: string, others: readonly OtherJob[]): WithoutNames {
  const ids = [...new Set(others.map((one) => one.id))].filter((one) => one !== id);
  const names = others.filter((one) => one.id !== id).flatMap((one) => [one.id, ...one.names]);
  // Longest first: an id may begin another.
  const either = ids
    .toSorted((a, b) => b.length - a.length)
    .map(escaped)
    .join('|');
  const named = new RegExp(`(?<![\\w-])(?:${either}) revision [^\\s,;:]+`, 'g');
  const several = new RegExp(`${otherJobs}(?:(?:, | and )${otherJobs})+`, 'g');
  const whole = names.map(
    (name) => new RegExp(`(?<![\\p{L}\\p{N}-])${escaped(name)}(?![\\p{L}\\p{N}-])`, 'iu'),
  );
  return {
    text: (text) => (either === '' ? text : text.replace(named, otherJobs).replace(several, otherJobs)),
    isNamedIn: (texts) => whole.some((name) => texts.some((text) => name.test(text))),
    also: (more) => withoutNames(id, [...others, ...more.map((one) => ({ id: one, names: [] }))]),
  };
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
}
