import type { ExportedFile } from '../export/exported-file.ts';
import { openPrinter } from '../export/print/print-pdf.ts';
import { packetPage } from '../publish/pages/packet-page.ts';
import { revisionSegment } from '../publish/site/addresses.ts';
import { wholeFile } from '../publish/site/kept-pages.ts';
import { siteAssets } from '../publish/site/site-assets.ts';
import { openTemplates } from '../publish/site/templates.ts';
import { jobDrawings } from './drawings.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus, statusOf } from './exit-status.ts';
import { printedAt } from './print-set.ts';
import { loadJob } from './shop/load-job.ts';
import { type JobOnSite, siteOfJob } from './shop/site-of-job.ts';
import { exportFolder, tellPaths, writeExported } from './told/exported-files.ts';
import { tellFrozen, tellNoPacket } from './told/report.ts';

/**
 * `rackleaf packet JOB`: what the owner takes home, as one HTML file and as PDF. Refused while the job may not be handed
 * over. Without a browser the HTML file is written all the same, and what is missing is told.
 */
export async function packet(
  effects: Effects,
  jobId: string,
  to: string | null,
  json: boolean,
): Promise<ExitStatus> {
  const found = await loadJob(effects, jobId, { compares: false });
  if (typeof found === 'number') return found;
  const { shop, loaded } = found;
  if (tellNoPacket(loaded, effects)) return exitStatus.stopped;
  tellFrozen(loaded, effects);
  const onSite = await siteOfJob(effects, shop, loaded);
  if (onSite === null) {
    effects.tell('packet: it can not be made, since the shop file has errors');
    return exitStatus.inputErrors;
  }
  const html = await packetHtml(onSite);
  const pdf = await printed(onSite, html);
  const { job } = loaded.plan;
  const files: readonly ExportedFile[] = [
    { name: 'packet.html', content: html },
    ...(typeof pdf === 'string' ? [] : [pdf]),
  ];
  const begin = `${job.id}-${revisionSegment(job.revision)}-`;
  const paths = await writeExported(effects, to ?? exportFolder(loaded.plan), begin, files);
  tellPaths(effects, { job: job.id }, paths, json);
  if (typeof pdf === 'string') {
    effects.tell(`packet: no PDF was made: ${pdf}`);
    return exitStatus.missing;
  }
  return statusOf({ problems: shop.problems.length > 0 || !onSite.isWhole, stopped: false });
}

/** The packet as PDF, for a job that may be handed over. What is missing comes back as a text. */
export async function packetPdf(onSite: JobOnSite): Promise<ExportedFile | string> {
  return printed(onSite, await packetHtml(onSite));
}

/** The packet as one HTML file. */
function packetHtml({ site, job }: JobOnSite): Promise<string> {
  const page = packetPage({ site: { ...site, jobs: [job] }, audience: 'customer' }, job);
  return wholeFile(page, { templates: openTemplates(), assets: siteAssets(), drawingsOf: jobDrawings() });
}

async function printed({ job: { plan } }: JobOnSite, html: string): Promise<ExportedFile | string> {
  const printer = await openPrinter();
  if ('missing' in printer) return printer.missing;
  try {
    const address = printedAt(plan, 'packet.html');
    // All that it needs stands in it: whatever it might ask for is not there.
    const content = await printer.print({ address, html, read: async () => null, day: plan.job.issuedOn });
    return { name: 'packet.pdf', content };
  } finally {
    await printer.close();
  }
}
