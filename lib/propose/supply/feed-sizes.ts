import type { VehicleRoute } from '../../model/content/vehicle-route.ts';
import { isFault } from '../../model/fault.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { FuseForm, ZoneKind } from '../../model/vocabulary.ts';
import { ambientRules, isEngineSpace } from '../../model/zone-ambient.ts';
import type { RunZone } from '../../power/conductor/ampacity.ts';
import {
  type CableCandidate,
  chooseConductor,
  type JudgedCable,
} from '../../power/conductor/conductor-choice.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { type Around, onShelf } from '../draft/around.ts';

/** The way of a conductor that is sized before anything is placed. */
export interface FeedWay {
  readonly lengthM: number;
  readonly zones: readonly { readonly zone: ZoneKind; readonly lengthM: number }[];
}

/** The way along a route, its loops with it. */
export function wayAlong({ rules }: Around, { passes }: Pick<VehicleRoute, 'passes'>): FeedWay {
  const loopsM = rules['loop-vehicle'].value + rules['loop-board'].value;
  const alongM = passes.reduce((sum, { length }) => sum + length, 0);
  return {
    lengthM: alongM + loopsM,
    zones: passes.map(({ zone, length }) => ({ zone, lengthM: length })),
  };
}

/** The smallest rating of a form that is made, at least as large as asked for and within the maker's ceiling (A). */
export function ratingFor(
  { parts }: Around,
  form: FuseForm,
  leastA: number,
  ceilingA: number | null,
): number | null {
  const ratings = Object.values(parts)
    .flatMap((part) => (part.kind === 'fuse' && part.form === form ? [part.rating] : []))
    .filter((ratingA) => ratingA >= leastA && (ceilingA === null || ratingA <= ceilingA));
  return ratings.length > 0 ? Math.min(...ratings) : null;
}

/** Greatest fault current that fuses of a form interrupt, the weakest of the catalogue (A). */
export function interruptsA({ parts, rules }: Around, form: FuseForm, ratingA: number): number {
  const usualA = rules[`interrupt-${form}`].value;
  const made = Object.values(parts).flatMap((part) =>
    part.kind === 'fuse' && part.form === form && part.rating === ratingA ? [part.interrupts ?? usualA] : [],
  );
  return made.length > 0 ? Math.min(...made) : usualA;
}

/** The ratings of a form that lie on the shelf and interrupt so much, low to high (A). */
export function shelvedRatings(around: Around, form: FuseForm, needA: number): readonly number[] {
  const usualA = around.rules[`interrupt-${form}`].value;
  return Object.entries(around.parts)
    .flatMap(([id, part]) =>
      part.kind === 'fuse' &&
      part.form === form &&
      (part.interrupts ?? usualA) >= needA &&
      onShelf(around, id) > 0
        ? [part.rating]
        : [],
    )
    .toSorted((a, b) => a - b);
}

/** What a feed has to do. */
interface FeedDuty {
  readonly ratingA: number;
  readonly currentA: number;
  readonly way: FeedWay;
  /** Ports at its ends. */
  readonly ports: readonly TerminalSpec[];
  /** What it may lose, of the drop that feed and return may have together. */
  readonly dropShare: number;
}

/**
 * The cross-section of the feed that its fuse, its length and its drop ask for, from the reels of the catalogue (mm2):
 * the choice of the plan, before anything is placed. Null where no reel of the catalogue goes into both ports.
 */
export function feedAreaMm2(around: Around, duty: FeedDuty): number | null {
  return feedFor(around, duty, 0)?.candidate.size.areaMm2 ?? null;
}

/** True where a reel that goes into both ports carries the fuse of a feed at the true ambient of its way too. */
export function carriesWarm(around: Around, duty: FeedDuty): boolean {
  return feedFor(around, duty, duty.ratingA)?.doubt === null;
}

/** The feed that is chosen; one that carries so much at the true ambient (A) where any does. */
function feedFor(around: Around, duty: FeedDuty, warmFuseA: number): JudgedCable | null {
  const rules = powerRules(around.rules);
  const { way, ratingA, currentA, ports, dropShare } = duty;
  const limits = ports.flatMap(({ takes }) => (takes ? [takes] : []));
  const smallestMm2 = Math.max(0, ...limits.map(({ from }) => from.areaMm2));
  const zones = way.zones.map(({ zone, lengthM }): RunZone => {
    return {
      zone,
      lengthM,
      ambientC: around.rules[ambientRules[zone]].value,
      engineSpace: isEngineSpace(zone),
      covered: zone === 'under-carpet',
      bundleCount: 1,
    };
  });
  const choice = chooseConductor(
    {
      fuseA: ratingA,
      currentA,
      lengthM: Math.max(way.lengthM, 1e-3),
      otherOhm: 0,
      mostDropV: rules.dropShare * rules.sizingV * dropShare,
      zones,
      ports: limits.map(({ to }, at) => ({ id: String(at), largestMm2: to.areaMm2 })),
      leastMm2: smallestMm2 * 0.999,
      warmFuseA,
    },
    powerReels(around),
    rules,
  );
  return isFault(choice) ? null : choice.chosen;
}

function powerReels({ parts }: Around): readonly CableCandidate[] {
  return Object.entries(parts).flatMap(([id, part]): CableCandidate[] =>
    part.kind === 'wire' && part.for.includes('power')
      ? [{ part: id, size: part.size, material: part.material, insulationC: part.insulation ?? null }]
      : [],
  );
}
