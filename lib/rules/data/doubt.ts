/** What is unlikely in the data of a part: which value it is, why, and what to do. */
export interface Doubt {
  readonly keys: readonly string[];
  readonly message: string;
  readonly remedy: string;
}
