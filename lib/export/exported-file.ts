/** One file that an export gives: its name within the folder of the job's revision, and what it holds. */
export interface ExportedFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/**
 * A name that is safe in any folder: letters, digits, dots and hyphens stay, all else becomes a hyphen. Built
 * from ids alone, so that no private value can reach it.
 */
export function fileName(stem: string, ending: string): string {
  const safe = stem.replace(/[^A-Za-z0-9.-]+/g, '-').replace(/^[.-]+|[.-]+$/g, '');
  return `${safe === '' ? 'unnamed' : safe}.${ending}`;
}
