import type { Page, SiteContext } from '../page/page.ts';
import { blankSurveyPage } from '../pages/blank-survey-page.ts';
import { calculatorPages } from '../pages/calculator-pages.ts';
import { comparePages } from '../pages/compare-pages.ts';
import { computationsPage } from '../pages/computations-page.ts';
import { estimatePage } from '../pages/estimate-page.ts';
import { findingsPage } from '../pages/findings-page.ts';
import { guidePages } from '../pages/guide-pages.ts';
import { homePage } from '../pages/home-page.ts';
import { jobPages } from '../pages/job-page.ts';
import { jobsPage } from '../pages/jobs-page.ts';
import { likePages } from '../pages/like-pages.ts';
import { packetPage } from '../pages/packet-page.ts';
import { partPages } from '../pages/part-pages.ts';
import { referencePages } from '../pages/reference-pages.ts';
import { searchPage } from '../pages/search-page.ts';
import { vehiclePages } from '../pages/vehicle-pages.ts';
import { worksheetPages } from '../pages/worksheet-page.ts';
import { writingPages } from '../pages/writing/writing-pages.ts';
import { inOrder } from './job-order.ts';

/**
 * Every page of a site for an audience, by address. The audience decides which pages there are, never where
 * they stand. A customer's copy holds the packet alone: no index tells of other jobs.
 */
export function sitePages(context: SiteContext): Page[] {
  const jobs = inOrder(context.site.jobs);
  if (context.audience === 'customer') return jobs.map((job) => packetPage(context, job));
  // Who gets one job writes no files of the shop, and computes with a part of its shelf nothing that holds.
  const ofWholeShop = context.site.isOneJob
    ? []
    : [
        blankSurveyPage(context),
        ...calculatorPages(context),
        ...referencePages(context),
        ...likePages(context),
        ...writingPages(context),
      ];
  const pages = [
    homePage(context),
    jobsPage(context),
    ...jobs.flatMap((job) => jobPages(context, job)),
    ...jobs.map((job) => packetPage(context, job)),
    ...jobs.flatMap((job) => estimatePage(context, job) ?? []),
    ...jobs.flatMap((job) => worksheetPages(context, job)),
    ...comparePages(context, jobs),
    ...partPages(context),
    ...vehiclePages(context),
    ...guidePages(context),
    findingsPage(context),
    computationsPage(context),
    ...ofWholeShop,
  ];
  return [...pages, searchPage(context, pages)].sort((a, b) => (a.address < b.address ? -1 : 1));
}
