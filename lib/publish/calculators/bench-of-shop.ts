import type { BenchShop } from '../../calculators/bench.ts';
import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Shop } from '../../model/content/shop.ts';
import type { Part } from '../../model/kinds/index.ts';
import { fuseShelf } from '../../plan/power/sizing/fuse-shelf.ts';
import { candidate } from '../../plan/wiring/cable-candidates.ts';
import { readHouseRules } from '../../read/read-house-rules.ts';

/** What the calculators know of a shop: its units, its house rules, and its shelf as the plan of a job sees it. */
export function benchOfShop(shop: Shop, parts: Readonly<Record<string, Part>>): BenchShop {
  const rules = Object.fromEntries(
    Object.entries(shop.rules).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  );
  const [rate] = partsOfKind(parts, 'processor').flatMap(([, part]) => part['sample-rate'] ?? []);
  return {
    units: shop.units,
    fraction: shop.fraction,
    rules,
    reels: partsOfKind(parts, 'wire').map(([id, part]) => {
      return { cable: candidate(id, part, shop.stock[id]), uses: part.for };
    }),
    ...fuseShelf(parts, shop, readHouseRules(rules)),
    ...(rate !== undefined && { sampleRateHz: rate }),
  };
}
