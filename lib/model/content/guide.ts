/** A method guide of the shop, in Markdown. */
export interface Guide {
  readonly slug: string;
  readonly title: string;
  readonly summary: string;
  /** Markdown, without its front matter. */
  readonly body: string;
}
