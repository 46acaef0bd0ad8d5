import { createHash } from 'node:crypto';
import type { Look, SeenFile } from './file-looks.ts';

/** What a page is made from: the files of one job with all that jobs share, the guides, or everything. */
export type Scope =
  | { readonly kind: 'job'; readonly job: string }
  | { readonly kind: 'guides' }
  | { readonly kind: 'shop' };

const jobAddress = /^\/jobs\/([^/]+)\//;

/** What the page at an address is made from. */
export function scopeOf(address: string): Scope {
  const [, job] = jobAddress.exec(address) ?? [];
  if (job !== undefined) return { kind: 'job', job };
  return address.startsWith('/guides/') ? { kind: 'guides' } : { kind: 'shop' };
}

/** Scopes by their name: each has its own. */
export function scopeName(scope: Scope): string {
  return scope.kind === 'job' ? `job ${scope.job}` : scope.kind;
}

/** The file of a job. */
export function jobFileOf(job: string): string {
  return `content/jobs/${job}.yaml`;
}

const jobFile = /^content\/jobs\/([^/]+)\.yaml$/;
const shared = /^content\/(?:shop\.yaml|parts\/|vehicles\/)/;
const ofGuides = /^content\/(?:shop\.yaml|guides\/)/;

/** Ids of the jobs that have a file, in their order. */
export function jobsIn({ files }: Look): string[] {
  return files.flatMap(({ path }) => jobFile.exec(path)?.[1] ?? []);
}

/** The files that the pages of a scope are made from, beside what other jobs take from the shelf. */
export function filesOf(scope: Scope, { files }: Look): SeenFile[] {
  if (scope.kind === 'shop') return [...files];
  if (scope.kind === 'guides') return files.filter(({ path }) => ofGuides.test(path));
  const own = `content/jobs/${scope.job}/`;
  return files.filter(
    ({ path }) => shared.test(path) || path === jobFileOf(scope.job) || path.startsWith(own),
  );
}

/** The digest of files: equal where names and bytes are. */
export function keyOf(files: readonly SeenFile[]): string {
  const hash = createHash('sha256');
  for (const { path, digest } of files) hash.update(`${path}\0${digest}\n`);
  return hash.digest('hex');
}
