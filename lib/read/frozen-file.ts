const ofFrozen = /^content\/jobs\/([^/]+)\/([^/]+)\.plan\.json$/;

/** Where the plan of a released revision is frozen. */
export function frozenPath(job: string, revision: string): string {
  return `content/jobs/${job}/${revision}.plan.json`;
}

/** Of what the file at a path is the frozen plan; null for any other file. */
export function frozenAt(path: string): { readonly job: string; readonly revision: string } | null {
  const [, job, revision] = ofFrozen.exec(path) ?? [];
  return job === undefined || revision === undefined ? null : { job, revision };
}

/** By what the revisions of a job sort as they follow each other: AA comes after Z. */
export function revisionTurn(revision: string): string {
  return revision.padStart(8);
}
