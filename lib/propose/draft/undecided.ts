/** What no rule can decide: an error at its place, with what to write. */
export interface Undecided {
  /** Where in the job file, key by key; or in that of the vehicle. */
  readonly path: readonly string[];
  readonly message: string;
  readonly remedy: string;
  /** Links whose way it leaves open. */
  readonly links?: readonly string[];
}
