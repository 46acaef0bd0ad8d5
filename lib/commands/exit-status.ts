/** Exit statuses of every command. */
export const exitStatus = {
  /** Done. */
  done: 0,
  /** A finding stops a job. */
  stopped: 1,
  /** The input has errors; both together are this one. */
  inputErrors: 2,
  /** Something outside is missing, or a bug of ours kept something from being made. */
  missing: 3,
} as const;
export type ExitStatus = (typeof exitStatus)[keyof typeof exitStatus];

/** The status of a run that found these. */
export function statusOf(found: {
  readonly problems: boolean;
  readonly stopped: boolean;
  readonly failed?: boolean;
}): ExitStatus {
  if (found.failed === true) return exitStatus.missing;
  if (found.problems) return exitStatus.inputErrors;
  return found.stopped ? exitStatus.stopped : exitStatus.done;
}
