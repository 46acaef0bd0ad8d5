import { partsOfKind } from '../../../model/content/parts-of-kind.ts';
import type { Job, Run } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import type { HouseRules } from '../../../model/house-rules.ts';
import type { PartOf } from '../../../model/kinds/index.ts';
import type { Chosen, ZoneKind } from '../../../model/vocabulary.ts';
import { ambientRules } from '../../../model/zone-ambient.ts';
import {
  type CoveringFit,
  type CoveringSize,
  chooseCovering,
} from '../../../power/conductor/covering-size.ts';
import { longestLengthM } from '../../../shelf/shelf-lengths.ts';

type CoveringForm = PartOf<'covering'>['form'];

interface Need {
  /** Forms that would do; none where nothing is needed. */
  readonly forms: readonly CoveringForm[];
  readonly why: string;
}

const protection: Need = { forms: ['loom', 'conduit'], why: 'against heat and wear' };
const wet: Need = { forms: ['loom', 'conduit'], why: 'against wear and water, since a door is wet inside' };
const looks: Need = { forms: ['braided-sleeve'], why: 'for looks, since it is seen' };

/** What each zone asks for: common practice, no source. */
const needs: Readonly<Record<ZoneKind, Need>> = {
  'engine-bay': protection,
  bulkhead: protection,
  underbody: protection,
  'near-exhaust': protection,
  door: wet,
  'in-sight': looks,
  'dash-top': looks,
  sill: { forms: [], why: 'none needed: it lies behind the sill trim' },
  'under-carpet': { forms: [], why: 'none needed: it lies flat under the carpet' },
  cabin: { forms: [], why: 'none needed: it lies behind trim' },
  cargo: { forms: [], why: 'none needed: it lies behind trim' },
  roof: { forms: [], why: 'none needed: it lies above the headlining' },
};

/** True where a run is covered in a zone: throughout where the job gave a covering, else where the zone asks for one. */
export function isCovered(run: Run, zone: ZoneKind): boolean {
  return run.covering !== null || needs[zone].forms.length > 0;
}

/** Coverings that keep their round whatever lies in them; what else there is draws tight on the bundle. */
const keepsRound: readonly CoveringForm[] = ['loom', 'conduit'];

/**
 * Outside of a bundle where it passes a zone, metres: both walls of its covering round what fills it, which is the bore
 * of loom and conduit and the bundle itself in what draws tight. Where a covering is asked for and none is known, its walls
 * alone count. Common practice, no source.
 */
export function outsideInM(
  { parts, rules }: Pick<Job, 'parts' | 'rules'>,
  run: Run,
  { zone, covering }: { readonly zone: ZoneKind; readonly covering: string | null },
  bundleM: number,
): number {
  const spec = covering === null ? undefined : parts[covering];
  const wallsM = rules['covering-walls'].value;
  if (spec?.kind !== 'covering' || bundleM <= 0) return bundleM + (isCovered(run, zone) ? wallsM : 0);
  return (keepsRound.includes(spec.form) ? Math.max(spec.bore, bundleM) : bundleM) + wallsM;
}

/** The covering of one stretch of a run, with the reason; `fits` is false where one is asked for and none was found. */
export interface PassCovering {
  readonly part: string | null;
  readonly chosen: Chosen;
  readonly reason: string;
  readonly fits: boolean;
}

/**
 * Covers one stretch of a run: as given; else the smallest of the catalogue, from the shelf first, whose form the
 * zone asks for, that goes over the bundle and stands more than the ambient. `lengthM` is what one piece must have.
 */
export function coverPass(
  job: Job,
  run: Pick<Run, 'covering'>,
  zone: ZoneKind,
  bundleM: number,
  lengthM: number,
): PassCovering {
  if (run.covering !== null) return { part: run.covering, chosen: 'given', reason: 'given', fits: true };
  const { forms, why } = needs[zone];
  const none = { part: null, chosen: 'computed' } as const;
  if (forms.length === 0 || bundleM <= 0) return { ...none, reason: why, fits: true };
  const ambientC = job.rules[ambientRules[zone]].value;
  const sizes = coverings(job, forms, ambientC);
  const over = { thickestM: bundleM, thinnestM: bundleM, lengthM: Math.max(lengthM, 1e-3) };
  const fromShelf = chooseCovering(over, sizes, coveringFit(job.rules));
  const choice =
    isFault(fromShelf) || fromShelf.chosen
      ? fromShelf
      : chooseCovering(
          over,
          sizes.map(({ stockM: _, ...size }) => size),
          coveringFit(job.rules),
        );
  if (isFault(choice)) return { ...none, reason: choice.message, fits: false };
  const asked = `${why} at ${ambientC} C`;
  if (!choice.chosen) return { ...none, reason: `${asked}: ${choice.reason}`, fits: false };
  return { part: choice.chosen.part, chosen: 'computed', reason: `${asked}: ${choice.reason}`, fits: true };
}

/** Room and grip of coverings, by the house rules. */
export function coveringFit(rules: HouseRules): CoveringFit {
  return { room: rules['covering-room'].value, grip: rules['covering-grip'].value };
}

/** Loom, conduit and sleeve close on anything thinner: loom and conduit need not, sleeve draws tight. */
function coverings(job: Job, forms: readonly CoveringForm[], ambientC: number): CoveringSize[] {
  return partsOfKind(job.parts, 'covering').flatMap(([part, spec]): CoveringSize[] =>
    forms.includes(spec.form) && spec.withstands > ambientC
      ? [{ part, openM: spec.bore, closedM: 0, stockM: longestLengthM(job.shop.stock[part]) }]
      : [],
  );
}
