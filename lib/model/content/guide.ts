import { z } from 'zod';
import { everyone } from '../audience.ts';
import { text } from '../fields.ts';

/** A method guide of the shop, in Markdown. */
export interface Guide {
  readonly slug: string;
  readonly title: string;
  readonly summary: string;
  /** Markdown, without its front matter. */
  readonly body: string;
}

/** What stands between two lines of `---` before the Markdown of a guide. */
export const frontMatterSchema = z.strictObject({
  title: everyone(text('Setting gain with a meter'), 'What the guide is called.'),
  summary: everyone(
    text('What to read on the meter, and when to stop.'),
    'One sentence that says what it is for. It stands in the list of guides, and above the guide.',
  ),
});
