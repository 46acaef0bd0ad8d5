/** A plan as a command line names it: a job as it stands, or one of its revisions. */
export interface ComparedName {
  readonly job: string;
  /** Null for the job as it stands. */
  readonly revision: string | null;
}

/** Reads `JOB` or `JOB@REV`; why it can not be read in place of a name. */
export function readComparedName(text: string): ComparedName | string {
  const [job = '', ...rest] = text.split('@');
  const revision = rest.length === 0 ? null : rest.join('@');
  return job === '' || revision === ''
    ? `"${text}" is neither JOB nor JOB@REV, such as under-seat-five or under-seat-five@A`
    : { job, revision };
}
