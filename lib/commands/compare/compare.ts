import { comparePlans, countedStates, type TableDifference } from '../../compare/compare-plans.ts';
import { boardOverlays } from '../../compare/overlay.ts';
import { stateLetters } from '../../draw/overlay/board-overlay.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { compareFile } from '../../publish/pages/compare-file.ts';
import { differenceLines, stateCounts } from '../../publish/pages/difference-table.ts';
import { revisionSegment } from '../../publish/site/addresses.ts';
import type { ShopSite } from '../../publish/site/shop-site.ts';
import { statusWords } from '../../publish/words/words.ts';
import { withCrew } from '../crew/with-crew.ts';
import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus, statusOf } from '../exit-status.ts';
import { type LoadedShop, loadShop, siteOf } from '../shop/load-shop.ts';
import { writeExported } from '../told/exported-files.ts';
import { tellFailed, tellProblems } from '../told/report.ts';
import { type ComparedName, readComparedName } from './compared-name.ts';
import { type Found, foundIn, isFrozenIn, lastAndToday } from './found-plans.ts';

/** What is compared, as the command line says it. */
export interface CompareChoices {
  readonly before: string;
  /** Null where a job is held against its own last release. */
  readonly after: string | null;
  /** The folder that a page of it is written to; null for none. */
  readonly to: string | null;
  readonly json: boolean;
}

/**
 * `rackleaf compare A [B]`: what differs from one job or revision to another, table by table; of one job alone, from its last
 * release to what its file asks for today. Differences are no fault: the status tells of the input alone.
 */
export async function compare(effects: Effects, choices: CompareChoices): Promise<ExitStatus> {
  const before = readComparedName(choices.before);
  const after = choices.after === null ? null : readComparedName(choices.after);
  const fault = [before, after, aloneFault(before, after)].find((one) => typeof one === 'string');
  if (typeof before === 'string' || typeof after === 'string' || typeof fault === 'string') {
    effects.tell(`compare: ${fault}`);
    return exitStatus.inputErrors;
  }
  const files = await effects.readContent();
  const asked = after === null ? [before] : [before, after].filter((one) => !isFrozenIn(files, one));
  const shop = await withCrew({ ...effects, readContent: async () => files }, (crew) =>
    loadShop(effects, crew, {
      only: (id) => asked.some(({ job }) => job === id),
      compares: after === null,
      keepsToday: after === null,
    }),
  );
  tellProblems(shop, effects);
  tellFailed(shop, effects);
  const pair = after === null ? lastAndToday(shop, before.job) : bothIn(shop, before, after);
  const site = siteOf(shop);
  if (typeof pair === 'string' || site === null) {
    effects.tell(`compare: ${typeof pair === 'string' ? pair : 'the shop file has errors'}`);
    return statusOf({ problems: true, stopped: false, failed: shop.failed.length > 0 });
  }
  await tellCompared(effects, site, pair, choices);
  return statusOf({ problems: shop.problems.length > 0, stopped: false, failed: shop.failed.length > 0 });
}

type Pair = readonly [before: Found, after: Found];

/** Why a revision can not be compared alone. */
function aloneFault(before: ComparedName | string, after: ComparedName | string | null): string | null {
  return after === null && typeof before !== 'string' && before.revision !== null
    ? `name what ${before.job}@${before.revision} is compared with, such as ${before.job}`
    : null;
}

function bothIn(shop: LoadedShop, before: ComparedName, after: ComparedName): Pair | string {
  const [was, is] = [foundIn(shop, before), foundIn(shop, after)];
  if (typeof was === 'string') return was;
  return typeof is === 'string' ? is : [was, is];
}

async function tellCompared(
  effects: Effects,
  site: ShopSite,
  [before, after]: Pair,
  { to, json }: CompareChoices,
): Promise<void> {
  const look = { audience: 'shop', style: lengthStyle(site.shop) } as const;
  const tables = comparePlans(before.plan, after.plan, look);
  if (json) effects.out(JSON.stringify(asData(before, after, tables), null, 2));
  else effects.out(asText(before, after, tables));
  if (to === null) return;
  const html = await compareFile({ site, audience: 'bench' }, before, after);
  const [was, is] = [before, after].map(({ plan: { job } }) => `${job.id}-${revisionSegment(job.revision)}`);
  const paths = await writeExported(effects, to, `${was}-to-${is}`, [{ name: '.html', content: html }]);
  for (const path of paths) effects.tell(path);
}

function asData(before: Found, after: Found, tables: readonly TableDifference[]): object {
  const side = ({ name, plan: { job, vehicle } }: Found) => ({
    name,
    job: job.id,
    revision: job.revision,
    status: job.status,
    issuedOn: job.issuedOn,
    vehicle: vehicle.id,
  });
  return {
    before: side(before),
    after: side(after),
    counts: countedStates(tables),
    tables,
    boards: boardOverlays(before.plan, after.plan, tables, 'shop'),
  };
}

function asText(before: Found, after: Found, tables: readonly TableDifference[]): string {
  const notKept = tables.filter(({ isKept }) => !isKept).map(({ title }) => title.toLowerCase());
  return [
    `before: ${sideText(before)}`,
    `now: ${sideText(after)}`,
    stateCounts(countedStates(tables)),
    ...tables.flatMap((table) =>
      table.rows.length === 0
        ? []
        : ['', `${table.title}: ${stateCounts(countedStates([table]))}`, ...linesOf(table)],
    ),
    ...(notKept.length > 0 ? ['', `not kept in one of the two: ${notKept.join(', ')}`] : []),
  ].join('\n');
}

function sideText({ name, plan }: { readonly name: string; readonly plan: BuildPlan }): string {
  const { status, issuedOn } = plan.job;
  return `${name} (${statusWords[status].toLowerCase()}, issued ${issuedOn})`;
}

function linesOf(table: TableDifference): string[] {
  return differenceLines(table).map(({ row, what, was, is }) => {
    const head = `  ${stateLetters[row.state]} ${row.state} ${row.name}`;
    if (row.state === 'gone') return `${head}: was ${was}`;
    return row.state === 'new' ? `${head}: ${is}` : `${head}: ${what} ${was}, now ${is}`;
  });
}
