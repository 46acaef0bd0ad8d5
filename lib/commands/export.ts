import { join } from 'node:path';
import { sheetFormats } from '../draw/sheet/sheet-format.ts';
import type { ExportedFile } from '../export/exported-file.ts';
import type { ExportChoices } from '../export/exporter.ts';
import { nestedFiles } from '../export/exporters/nest.ts';
import { type ExportFormat, exporters, exportFormats } from '../export/index.ts';
import { a4Stock, letterStock, readLabelStock, stockFault } from '../export/labels/label-stock.ts';
import { type BuildPlan, isStopped } from '../model/plan/index.ts';
import { sheetMark } from '../model/plan/sheet-mark.ts';
import { revisionSegment } from '../publish/site/addresses.ts';
import { shippedMetrics } from '../publish/site/shipped-metrics.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus, statusOf } from './exit-status.ts';
import { packetPdf } from './packet.ts';
import { printSet, type SheetSet } from './print-set.ts';
import { type LoadedJob, type LoadedShop, loadShop, missingJob, missingStatus } from './shop/load-shop.ts';
import { siteOfJob } from './shop/site-of-job.ts';
import { exportFolder, tellPaths, writeExported } from './told/exported-files.ts';
import { tellFrozen, tellNoPacket, tellProblems } from './told/report.ts';

/** The words of the command line, as they were given. */
export interface ExportWords {
  /** At least one. */
  readonly jobs: readonly string[];
  readonly to: string | null;
  /** None: every format. */
  readonly formats: readonly string[];
  readonly units: string | null;
  readonly paper: string | null;
  readonly labelStock: string | null;
  /** Which sheets the PDF has; null: all of them. */
  readonly sheets: string | null;
  readonly json: boolean;
}

/** What is written where no format is asked for. */
const usualFormats = [...exportFormats, 'pdf'] as const;
/** The packet is for the customer: it is made where it is asked for. */
const everyFormat = [...usualFormats, 'packet'] as const;
type Format = (typeof everyFormat)[number];

/** `rackleaf export JOB`, or `rackleaf export JOB JOB ...`: several jobs are nested together on stock sheets. */
export function exportJobs(effects: Effects, words: ExportWords): Promise<ExitStatus> {
  const [job = '', ...more] = new Set(words.jobs);
  return more.length === 0 ? exportJob(effects, job, words) : exportNest(effects, [job, ...more], words);
}

/** The pieces of several jobs nested together: no other format is made of several jobs. */
async function exportNest(
  effects: Effects,
  jobs: readonly string[],
  words: ExportWords,
): Promise<ExitStatus> {
  const other = words.formats.find((format) => format !== 'nest');
  if (other !== undefined || words.sheets !== null)
    return refuse(effects, 'of several jobs only the nest is made: --format nest');
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => jobs.includes(id), compares: false }),
  );
  tellProblems(shop, effects);
  const missing = jobs.find((id) => !shop.jobs.some(({ job }) => job.id === id));
  if (missing !== undefined) return refuse(effects, missingJob(shop, missing), missingStatus(shop));
  const plans = shop.jobs.map(({ plan }) => plan);
  const [first] = plans;
  const choices = first ? choicesOf(words, first) : 'there is no job';
  if (typeof choices === 'string') return refuse(effects, choices);
  for (const loaded of shop.jobs) tellFrozen(loaded, effects);
  const files = nestedFiles(plans, { metrics: shippedMetrics(), choices });
  const draft = plans.some((plan) => sheetMark(plan)?.word === 'DRAFT');
  const folder = words.to ?? join('.rackleaf', 'export', 'nest');
  const paths = await writeExported(effects, folder, nameBegin(plans, draft), files);
  tellPaths(effects, { jobs }, paths, words.json);
  return statusOf({ problems: shop.problems.length > 0, stopped: plans.some(isStopped) });
}

/**
 * The files of a job for other programs and machines, into a folder of its revision. Every name
 * bears the job and its revision, and begins with DRAFT until it is released.
 */
async function exportJob(effects: Effects, job: string, words: ExportWords): Promise<ExitStatus> {
  const formats = formatsOf(words);
  if (typeof formats === 'string') return refuse(effects, formats);
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => id === job, compares: false }),
  );
  tellProblems(shop, effects);
  const [loaded] = shop.jobs;
  if (!loaded) return refuse(effects, missingJob(shop, job), missingStatus(shop));
  const choices = choicesOf(words, loaded.plan);
  if (typeof choices === 'string') return refuse(effects, choices);
  tellFrozen(loaded, effects);
  const made = filesOf(loaded.plan, choices, formats);
  const refused = formats.includes('packet') && tellNoPacket(loaded, effects);
  const set = words.sheets === null ? 'whole' : 'bench';
  const printing = formats.filter((format) => format === 'pdf' || (format === 'packet' && !refused));
  const printed = await printedFiles(effects, shop, loaded, set, printing);
  const { plan } = loaded;
  const begin = nameBegin([plan], sheetMark(plan)?.word === 'DRAFT');
  const paths = await writeExported(effects, words.to ?? exportFolder(plan), begin, [
    ...made,
    ...printed.files,
  ]);
  tellPaths(effects, { job }, paths, words.json);
  if (printed.missing !== null) {
    effects.tell(`export: no PDF was made: ${printed.missing}`);
    return exitStatus.missing;
  }
  const problems = shop.problems.length > 0 || !printed.isWhole;
  return statusOf({ problems, stopped: refused || isStopped(plan) });
}

/** What a browser made of a job. */
interface Printed {
  readonly files: readonly ExportedFile[];
  /** What a file that is not there would have needed, as a text. */
  readonly missing: string | null;
  /** False where a photo is left out. */
  readonly isWhole: boolean;
}

/** What a browser prints: the set for the bench, and the customer's packet. */
async function printedFiles(
  effects: Effects,
  shop: LoadedShop,
  loaded: LoadedJob,
  set: SheetSet,
  formats: readonly Format[],
): Promise<Printed> {
  if (formats.length === 0) return { files: [], missing: null, isWhole: true };
  const onSite = await siteOfJob(effects, shop, loaded);
  if (!onSite) {
    const missing = 'the page of the job can not be made, since the shop file has errors';
    return { files: [], missing, isWhole: true };
  }
  const made = [
    ...(formats.includes('pdf') ? [await printSet(onSite, set)] : []),
    ...(formats.includes('packet') ? [await packetPdf(onSite)] : []),
  ];
  return {
    files: made.filter((one) => typeof one !== 'string'),
    missing: made.find((one) => typeof one === 'string') ?? null,
    isWhole: onSite.isWhole,
  };
}

function refuse(effects: Effects, message: string, status: ExitStatus = exitStatus.inputErrors): ExitStatus {
  effects.tell(`export: ${message}`);
  return status;
}

function formatsOf({ formats: words, sheets }: ExportWords): readonly Format[] | string {
  if (sheets !== null && sheets !== 'bench')
    return '--sheets takes bench: the sheets that lie on the bench while the board is built';
  if (sheets !== null && words.some((word) => word !== 'pdf'))
    return '--sheets goes with --format pdf alone: other files have no sheets';
  if (sheets !== null) return ['pdf'];
  if (words.length === 0) return usualFormats;
  const known: readonly string[] = everyFormat;
  const unknown = words.find((word) => !known.includes(word));
  if (unknown !== undefined) return `there is no format "${unknown}"; there are ${everyFormat.join(', ')}`;
  return everyFormat.filter((format) => words.includes(format));
}

function choicesOf({ units, paper, labelStock }: ExportWords, plan: BuildPlan): ExportChoices | string {
  if (units !== null && units !== 'mm' && units !== 'inch') return '--units takes mm or inch';
  if (paper !== null && paper !== 'letter' && paper !== 'a4') return '--paper takes letter or a4';
  const name = (paper ?? plan.shop.paper) === 'a4' ? 'A4' : 'Letter';
  const usual = name === 'A4' ? a4Stock : letterStock;
  const stock = labelStock === null ? usual : readLabelStock(labelStock, usual);
  if (typeof stock === 'string') return `--label-stock: ${stock}`;
  const fault = stockFault(stock, sheetFormats[name]);
  if (fault !== null) return `--label-stock: ${fault}`;
  return { unit: units ?? (plan.shop.units === 'inch' ? 'inch' : 'mm'), paper: name, labelStock: stock };
}

function filesOf(plan: BuildPlan, choices: ExportChoices, formats: readonly Format[]): ExportedFile[] {
  const wanted: readonly ExportFormat[] = exportFormats.filter((format) => formats.includes(format));
  const metrics = shippedMetrics();
  return wanted.flatMap((format) => [...exporters[format].files({ plan, metrics, choices })]);
}

/** What the names of files begin with: whether they are a draft's, the job and its revision, how many more jobs there are. */
function nameBegin(plans: readonly Pick<BuildPlan, 'job'>[], draft: boolean): string {
  const [first] = plans;
  if (!first) return '';
  const more = plans.length > 1 ? `-and-${plans.length - 1}-more` : '';
  return `${draft ? 'DRAFT-' : ''}${first.job.id}-${revisionSegment(first.job.revision)}${more}-`;
}
