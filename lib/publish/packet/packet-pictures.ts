import type { Environment } from 'nunjucks';
import type { PlanDrawing } from '../site/shop-site.ts';

/** Stands in a packet where the pictures of its boards go. Texts are escaped, so none can look like it. */
export const picturesToken = '<!--pictures-->';

/** Puts the pictures of the boards into a packet: of the drawings of a plan those that everyone may see. */
export function fillPictures(
  html: string,
  drawings: readonly PlanDrawing[],
  templates: Pick<Environment, 'render'>,
): string {
  const pictures = drawings.filter(({ openTo }) => openTo === 'everyone');
  return html.replace(picturesToken, () => templates.render('packet-pictures.njk', { pictures }));
}
