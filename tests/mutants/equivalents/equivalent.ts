/** A change of the code that changes nothing that can be observed. */
export interface Equivalent {
  readonly file: string;
  /** The line of the file in which it begins, from its first word as far as tells it from all others. */
  readonly line: string;
  /** What is changed in it, and into what; of several lines the first words are enough. */
  readonly from: string;
  readonly to: string;
  readonly why: string;
}
