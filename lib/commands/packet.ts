import { isAbsolute, join } from 'node:path';
import type { ExportedFile } from '../export/exported-file.ts';
import { openPrinter } from '../export/print/print-pdf.ts';
import { problemText } from '../model/problem.ts';
import { packetPage } from '../publish/pages/packet-page.ts';
import { revisionSegment } from '../publish/site/addresses.ts';
import { wholeFile } from '../publish/site/kept-pages.ts';
import { openTemplates } from '../publish/site/templates.ts';
import { withCrew } from './crew/with-crew.ts';
import { jobDrawings } from './drawings.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus, statusOf } from './exit-status.ts';
import { printedAt } from './print-set.ts';
import {
  type LoadedJob,
  type LoadedShop,
  loadShop,
  missingJob,
  missingStatus,
  siteWithPhotos,
} from './shop/load-shop.ts';
import { tellFrozen, tellNoPacket, tellProblems } from './told/report.ts';

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
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => id === jobId, compares: false }),
  );
  tellProblems(shop, effects);
  const [loaded] = shop.jobs;
  if (!loaded) {
    effects.tell(missingJob(shop, jobId));
    return missingStatus(shop);
  }
  if (tellNoPacket(loaded, effects)) return exitStatus.stopped;
  tellFrozen(loaded, effects);
  const made = await packetHtml(effects, shop, loaded);
  if (made === null) {
    effects.tell(`packet: ${noShop}`);
    return exitStatus.inputErrors;
  }
  const { html } = made;
  const pdf = await printed(loaded, html);
  const { id, revision } = loaded.plan.job;
  const folder = to ?? join('.rackleaf', 'export', id, revisionSegment(revision));
  const begin = `${id}-${revisionSegment(revision)}-`;
  const files: readonly ExportedFile[] = [
    { name: 'packet.html', content: html },
    ...(typeof pdf === 'string' ? [] : [pdf]),
  ];
  const paths = files.map(({ name }) => join(folder, `${begin}${name}`));
  for (const [index, path] of paths.entries()) await effects.write(path, files[index]?.content ?? '');
  const told = paths.map((path) => (isAbsolute(path) ? path : path.split('\\').join('/')));
  if (json) effects.out(JSON.stringify({ job: id, files: told }, null, 2));
  else for (const path of told) effects.out(path);
  if (typeof pdf === 'string') {
    effects.tell(`packet: no PDF was made: ${pdf}`);
    return exitStatus.missing;
  }
  return statusOf({ problems: shop.problems.length > 0 || !made.isWhole, stopped: false });
}

const noShop = 'it can not be made, since the shop file has errors';

/** The packet as PDF, for a job that may be handed over. What is missing comes back as a text. */
export async function packetPdf(
  effects: Effects,
  shop: LoadedShop,
  loaded: LoadedJob,
): Promise<ExportedFile | string> {
  const made = await packetHtml(effects, shop, loaded);
  return made === null ? noShop : printed(loaded, made.html);
}

/** A packet as one HTML file, and whether each of its photos is in it. */
interface PacketHtml {
  readonly html: string;
  readonly isWhole: boolean;
}

/** The packet as one HTML file; null where the shop file can't be read. Photos that are left out are told. */
async function packetHtml(
  effects: Effects,
  shop: LoadedShop,
  { plan }: LoadedJob,
): Promise<PacketHtml | null> {
  const made = await siteWithPhotos(effects, shop);
  for (const problem of made?.problems ?? []) effects.tell(problemText(problem));
  const site = made?.site;
  const job = site?.jobs.find((one) => one.plan.job.id === plan.job.id);
  if (!site || !job) return null;
  const page = packetPage({ site: { ...site, jobs: [job] }, audience: 'customer' }, job);
  const html = await wholeFile(page, openTemplates(), jobDrawings());
  return { html, isWhole: made?.problems.length === 0 };
}

async function printed({ plan }: LoadedJob, html: string): Promise<ExportedFile | string> {
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
