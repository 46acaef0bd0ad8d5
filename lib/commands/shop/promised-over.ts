import type { PromisedShelf, PromisedTo } from '../../model/content/promised.ts';
import type { Shop } from '../../model/content/shop.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Finding } from '../../model/finding.ts';
import type { Keep, Step } from '../../model/keep.ts';
import { readAll, shopFile } from '../../read/read-file.ts';
import { promisedOverShelf } from '../../rules/data/promised.ts';
import { offeredStock } from '../../shelf/offered-stock.ts';

/** A shop file, and all that is promised of its stock. */
interface PromisingFiles {
  readonly files: readonly SourceFile[];
  readonly promises: readonly PromisedTo[];
}

/**
 * What a shop has promised beyond what its shelf has. It is of no job: the sheets of those that are promised it are frozen,
 * and others may never ask for it.
 */
export function promisedOver(input: PromisingFiles, keep: Keep): readonly Finding[] {
  return input.promises.length === 0 ? [] : keep(promisedOverStep, input);
}

const promisedOverStep: Step<PromisingFiles, readonly Finding[]> = {
  id: 'promised-over',
  compute: ({ files, promises }, keep) => {
    const [read] = readAll(files, shopFile, [], keep);
    if (!read) return [];
    const { value: shop, placed } = read;
    const { stock, promised } = offeredStock(shop.stock, promises);
    const measures = { job: {}, vehicle: {}, part: {}, shop: placed.measures };
    return promisedOverShelf({ shop: { ...shop, stock }, promised, measures }, placed.placeOf);
  },
};

/** What of the stock of a shop is promised, by part. */
export function promisedOf(shop: Pick<Shop, 'stock'>, promises: readonly PromisedTo[]): PromisedShelf {
  return offeredStock(shop.stock, promises).promised;
}
