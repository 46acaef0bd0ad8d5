/** Addresses of the site. They are printed on paper, so they stay as they are. */
export const addresses = {
  home: '/',
  jobs: '/jobs/',
  job: (id: string) => `/jobs/${id}/`,
  estimate: (id: string) => `/jobs/${id}/estimate/`,
  packet: (id: string) => `/jobs/${id}/packet/`,
  worksheet: (id: string) => `/jobs/${id}/worksheet/`,
  revision: (id: string, revision: string) => `/jobs/${id}/${revisionSegment(revision)}/`,
  revisionWorksheet: (id: string, revision: string) => `/jobs/${id}/${revisionSegment(revision)}/worksheet/`,
  /** What changed from the released revision before to this one. */
  revisionChanges: (id: string, revision: string) => `/jobs/${id}/${revisionSegment(revision)}/changes/`,
  /** What differs from the last released revision as the job stands. */
  changes: (id: string) => `/jobs/${id}/changes/`,
  parts: '/parts/',
  part: (id: string) => `/parts/${id}/`,
  vehicles: '/vehicles/',
  vehicle: (id: string) => `/vehicles/${id}/`,
  /** A job held against the one before it in the same vehicle. */
  vehicleJob: (id: string, job: string) => `/vehicles/${id}/jobs/${job}/`,
  survey: '/survey/',
  reference: '/reference/',
  referenceValue: (facet: string, slug: string) => `/reference/${facet}/${slug}/`,
  like: '/like/',
  jobLike: (id: string) => `/like/jobs/${id}/`,
  spaceLike: (vehicle: string, space: string) => `/like/spaces/${vehicle}/${space}/`,
  guides: '/guides/',
  guide: (slug: string) => `/guides/${slug}/`,
  writing: '/writing/',
  writingKind: (slug: string) => `/writing/${slug}/`,
  findings: '/findings/',
  computations: '/computations/',
  calculators: '/calculators/',
  calculator: (id: string) => `/calculators/${id}/`,
  calculatorsFile: '/calculators/one-file/',
  search: '/search/',
} as const;

/** Folder of a page's drawings, beside the page. */
export const drawingsFolder = 'drawings';

/** What stands beside the revisions of a job in its folder. */
const besideRevisions: ReadonlySet<string> = new Set([
  'worksheet',
  'packet',
  'estimate',
  'changes',
  drawingsFolder,
]);

/**
 * A revision as a part of an address: letters, digits and single dots or hyphens stay; all else is written
 * as its code point. A revision may not take the place of the worksheet, of the packet, of the estimate, of the changes
 * or of the drawings.
 */
export function revisionSegment(revision: string): string {
  const written = revision.replace(
    /[^A-Za-z0-9-]/gu,
    (character) => `_${(character.codePointAt(0) ?? 0).toString(16)}_`,
  );
  return besideRevisions.has(written.toLowerCase()) ? `_${written}` : written;
}

/** The worksheet of a frozen revision, or of the current one. */
export function worksheetAddress(id: string, revision: string | null): string {
  return revision === null ? addresses.worksheet(id) : addresses.revisionWorksheet(id, revision);
}

/** The way up from an address to the top of the site: `../../` from `/jobs/a/`, `./` from the top itself. */
export function wayUp(from: string): string {
  const depth = from.split('/').filter((part) => part !== '').length;
  return depth === 0 ? './' : '../'.repeat(depth);
}

/** The folder of an address, without a slash before it: `jobs/a/`. */
export function folderOf(address: string): string {
  return address.replace(/^\//, '');
}

/** The file of an address, without a slash before it: `jobs/a/index.html`. */
export function fileOf(address: string): string {
  return `${folderOf(address)}index.html`;
}

/**
 * A relative link from one address to another. It names the file, so that it also works from a folder
 * that no server serves.
 */
export function linkTo(from: string, to: string): string {
  return `${wayUp(from)}${fileOf(to)}`;
}
