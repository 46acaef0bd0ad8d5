/** One file of `content/`, as it was read: its path from the folder that holds `content/`, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}
