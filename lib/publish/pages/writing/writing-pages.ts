import { drawGuidePicture } from '../../../draw/guide-pictures/index.ts';
import { once, onceEach } from '../../../plan/once-each.ts';
import type { Page, SiteContext } from '../../page/page.ts';
import { addresses } from '../../site/addresses.ts';
import { shippedMetrics } from '../../site/shipped-metrics.ts';
import { guideIndexPage, guidePage } from '../guide-pages.ts';
import { writtenKinds } from './file-kinds.ts';
import { firstBoard, firstBoardSlug } from './first-board.ts';
import { houseRulesPage, houseRulesSummary, houseRulesTitle } from './house-rules-page.ts';
import { type DrawPicture, kindPage, writingTitle } from './kind-page.ts';
import { quantitiesPage, quantitiesSummary, quantitiesTitle } from './quantities-page.ts';

/** A picture is the same on every page: it is drawn when the first is made, since the type is only opened then. */
const draw: DrawPicture = onceEach(
  (name) => drawGuidePicture(name, shippedMetrics()),
  (name) => name,
);

/** The writing guide: its index, the tutorial, and a page for each kind of file and part, made from their schemas. */
export function writingPages(context: SiteContext): Page[] {
  const kinds = writtenKinds();
  // The tutorial is only read where a page tells of it.
  const tutorial = once(firstBoard);
  const entry = (slug: string, title: string, summary: string) => {
    return { title, summary, address: addresses.writingKind(slug) };
  };
  const index = { address: addresses.writing, title: writingTitle };
  return [
    guideIndexPage(context, {
      ...index,
      entries: () => [
        entry(firstBoardSlug, tutorial().title, tutorial().summary),
        entry('quantities', quantitiesTitle, quantitiesSummary),
        entry('house-rules', houseRulesTitle, houseRulesSummary),
        ...kinds.map((kind) => entry(kind.slug, kind.title, kind.summary)),
      ],
    }),
    guidePage(context, {
      address: addresses.writingKind(firstBoardSlug),
      above: [index.title, index.address],
      guide: tutorial,
    }),
    quantitiesPage(context),
    houseRulesPage(context, draw),
    ...kinds.map((kind) => kindPage(context, kind, draw)),
  ];
}
