import { join } from 'node:path';
import { moneyText, orderCsv } from '../export/csv/order-csv.ts';
import type { PromisedTo } from '../model/content/promised.ts';
import { isStopped } from '../model/plan/index.ts';
import { shelfTakes } from '../plan/work/shelf-takes.ts';
import { type OrderLine, orderList } from '../shelf/order-list.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { type LoadedJob, type LoadedShop, loadShop } from './shop/load-shop.ts';
import { tellFailed, tellProblems } from './told/report.ts';

/** `rackleaf export --orders`: what all jobs together that are not built in yet take and the shelf lacks. */
export async function exportOrders(effects: Effects, to: string | null): Promise<ExitStatus> {
  const shop = await withCrew(effects, (crew) => loadShop(effects, crew, { compares: false }));
  const { shop: file, parts } = shop.content();
  if (!file || shop.problems.length > 0 || shop.failed.length > 0) {
    tellProblems(shop, effects);
    tellFailed(shop, effects);
    effects.tell('export: an order list that lacks a job would be short: mend the errors first');
    return shop.problems.length > 0 || !file ? exitStatus.inputErrors : exitStatus.missing;
  }
  const drawn = shop.jobs.filter(
    ({ released, job }) => !released && job.status !== 'installed' && job.status !== 'superseded',
  );
  const stopped = drawn.filter(({ plan }) => isStopped(plan));
  for (const { job } of stopped)
    effects.tell(`${job.id} is left out: a finding stops it, so what it takes may still change`);
  const asked = drawn.filter(({ plan }) => !isStopped(plan));
  const own = new Set(asked.map(({ job }) => job.id));
  // The next revision of a released job takes the place of it.
  const lines = orderList(file, [
    ...shop.promises.all.filter(({ job }) => !own.has(job)),
    ...asked.flatMap((one) => takenBy(one, shop) ?? []),
  ]);
  const path = join(to ?? join('.rackleaf', 'export'), 'orders.csv');
  await effects.write(path, orderCsv(lines, parts, file.currency));
  tellSum(effects, lines, file.currency);
  effects.out(path.split('\\').join('/'));
  return stopped.length > 0 ? exitStatus.stopped : exitStatus.done;
}

function takenBy({ job, plan }: LoadedJob, { promises }: LoadedShop): PromisedTo | null {
  const { issuedOn } = plan.job;
  return promises.ofDrawn(job.id, { revision: job.revision, issuedOn, takes: shelfTakes(plan) });
}

function tellSum(effects: Effects, lines: readonly OrderLine[], currency: string | undefined): void {
  const priced = lines.flatMap(({ cents }) => cents ?? []);
  const sum = priced.reduce((total, cents) => total + cents, 0);
  const cost =
    priced.length === 0 ? '' : `; ${priced.length} with a price, ${moneyText(sum)} ${currency ?? ''}`;
  effects.tell(`${lines.length} ${lines.length === 1 ? 'part' : 'parts'} to order${cost}`);
}
