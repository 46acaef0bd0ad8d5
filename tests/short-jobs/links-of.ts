import { nothingReleased } from '../../lib/model/content/built.ts';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { readShort, shop, shortText } from './short-shop.ts';

/** A text with a piece of it written otherwise; one that it has not is a fault of the test. */
export function instead(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`The text has no "${from}".`);
  return text.replace(from, to);
}

/** A short job with pieces of it written otherwise. */
export function changed(job: string, ...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => instead(text, from, to), shortText(job));
}

/** The shop with a file of it written otherwise. */
export function shopWith(file: string, from: string, to: string): readonly SourceFile[] {
  return shop.map((one) => (one.path.endsWith(file) ? { ...one, text: instead(one.text, from, to) } : one));
}

/** The links of a job as read, from end to end by their names; and what was not understood. */
export function linksOf(text: string, files: readonly SourceFile[] = shop) {
  const { job, problems } = readShort(text, nothingReleased, files);
  const links = Object.entries(job?.file.links ?? {}).map(([id, { from, to }]) => [id, `${from} ${to}`]);
  return {
    job,
    links: Object.fromEntries(links) as Readonly<Record<string, string>>,
    problems: problems.map(({ message, remedy }) => `${message}; ${remedy}`),
    proposed: (id: string) => job?.proposals.find(({ path }) => path.join('.') === `links.${id}`),
  };
}
