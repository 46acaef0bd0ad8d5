import { drawWays } from '../../../draw/ways/index.ts';
import { chromeOf } from '../../page/chrome.ts';
import { markdownHtml } from '../../page/markdown.ts';
import type { Link, Page, SiteContext } from '../../page/page.ts';
import { addresses, linkTo } from '../../site/addresses.ts';
import { guideRecord } from '../../site/search-fields.ts';
import { shippedMetrics } from '../../site/shipped-metrics.ts';
import type { GuideBody, GuidesBody } from '../guide-pages.ts';
import { writtenKinds } from './file-kinds.ts';
import { firstBoard } from './first-board.ts';
import { houseRulesPage, houseRulesSummary, houseRulesTitle } from './house-rules-page.ts';
import { type DrawPicture, kindPage, writingTitle } from './kind-page.ts';
import { quantitiesPage, quantitiesSummary, quantitiesTitle } from './quantities-page.ts';

/** The writing guide: its index, the tutorial, and a page for each kind of file and part, made from their schemas. */
export function writingPages(context: SiteContext): Page[] {
  const kinds = writtenKinds();
  // The type is only opened where a page with a picture is made.
  const draw: DrawPicture = (name) => drawWays(name, shippedMetrics());
  return [
    indexPage(context),
    firstBoardPage(context),
    quantitiesPage(context),
    houseRulesPage(context, draw),
    ...kinds.map((kind) => kindPage(context, kind, draw)),
  ];
}

function indexPage(context: SiteContext): Page {
  const entry = (slug: string, title: string, summary: string): Link & { readonly summary: string } => ({
    title,
    summary,
    href: linkTo(addresses.writing, addresses.writingKind(slug)),
  });
  const { title, summary } = firstBoard();
  return {
    address: addresses.writing,
    template: 'guides.njk',
    model: () => {
      const body: GuidesBody = {
        guides: [
          entry('first-board', title, summary),
          entry('quantities', quantitiesTitle, quantitiesSummary),
          entry('house-rules', houseRulesTitle, houseRulesSummary),
          ...writtenKinds().map((kind) => entry(kind.slug, kind.title, kind.summary)),
        ],
      };
      return { ...chromeOf(context, { address: addresses.writing, title: writingTitle }), body };
    },
  };
}

function firstBoardPage(context: SiteContext): Page {
  const guide = firstBoard();
  const address = addresses.writingKind(guide.slug);
  return {
    address,
    template: 'guide.njk',
    search: () => guideRecord(guide),
    model: () => {
      const body: GuideBody = { summary: guide.summary, html: markdownHtml(guide) };
      const { title } = guide;
      return { ...chromeOf(context, { address, title, above: [[writingTitle, addresses.writing]] }), body };
    },
  };
}
