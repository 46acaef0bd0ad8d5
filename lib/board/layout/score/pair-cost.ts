import { missingAirOver } from '../air-over.ts';
import { overlapM } from '../item.ts';
import { faceCoveredM, gapShortfall, type PlacedItem, planGapM, shortfalls } from '../placed.ts';
import { controlsOverheadM, stackBlockedM } from '../raising/stacking.ts';

/** What two parts take from each other, metres. */
export interface PairCost {
  accessM: number;
  airM: number;
  /** Overlap, and what has to be reached and is covered. */
  broken: number;
  /** Rooms and gaps that are missing in `accessM` and `airM`. */
  short: number;
}

/** Of two parts that take nothing from each other. */
const apart: Readonly<PairCost> = { accessM: 0, airM: 0, broken: 0, short: 0 };

/** What two placed parts take from each other. */
export function pairCost(a: PlacedItem, b: PlacedItem): Readonly<PairCost> {
  if (planGapM(a.body, b.body) > Math.max(a.reachM, b.reachM)) return apart;
  const cost = { ...apart };
  const inEachOther = overlapM(a.body, b.body);
  if (inEachOther > 1e-9) cost.broken += inEachOther;
  cost.broken += faceCoveredM(a, b) + faceCoveredM(b, a) + stackBlockedM(a, b) + stackBlockedM(b, a);
  const gap = gapShortfall(a, b);
  if (gap) addAir(cost, gap.neededM - gap.freeM);
  for (const list of [shortfalls(a, b), shortfalls(b, a)])
    for (const { kind, freeM, neededM } of list) {
      if (kind === 'accessM' || kind === 'toolM') cost.broken += neededM - freeM;
      else if (kind === 'bendM') addAccess(cost, neededM - freeM);
      else addAir(cost, neededM - freeM);
    }
  addOverhead(cost, a, b);
  addOverhead(cost, b, a);
  return cost;
}

/** What a part takes of a lower one; of one that the search raises, `broken` counts it. */
function addOverhead(cost: PairCost, lower: PlacedItem, upper: PlacedItem): void {
  if (upper.raising || upper.body.minZ <= lower.body.minZ) return;
  const coveredM = controlsOverheadM(lower, upper);
  if (coveredM > 1e-9) addAccess(cost, coveredM);
  const air = missingAirOver(lower, upper);
  if (air) addAir(cost, air.neededM - air.freeM);
}

function addAccess(cost: PairCost, byM: number): void {
  cost.accessM += byM;
  cost.short += 1;
}

function addAir(cost: PairCost, byM: number): void {
  cost.airM += byM;
  cost.short += 1;
}
