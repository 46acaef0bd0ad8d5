import { join } from 'node:path';
import { stockCsv } from '../export/csv/stock-csv.ts';
import { readContent } from '../read/read-content.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';

/** `rackleaf export --stock`: what lies on the shelf as one table, which import takes back. */
export async function exportStock(effects: Effects, to: string | null): Promise<ExitStatus> {
  const { shop, parts } = readContent(await effects.readContent());
  if (!shop) {
    effects.tell('export: content/shop.yaml has errors: mend them first');
    return exitStatus.inputErrors;
  }
  const path = join(to ?? join('.rackleaf', 'export'), 'stock.csv');
  await effects.write(path, stockCsv(shop, parts));
  effects.out(path.split('\\').join('/'));
  return exitStatus.done;
}
