import { partsOfKind } from '../../../model/content/parts-of-kind.ts';
import type { Job, Run } from '../../../model/content/resolved-job.ts';
import { routeLengthM } from '../../../model/content/vehicle-route.ts';
import { isFault } from '../../../model/fault.ts';
import type { PlanPass, PlanRun } from '../../../model/plan/index.ts';
import type { Remark } from '../../../model/remark.ts';
import type { ZoneKind } from '../../../model/vocabulary.ts';
import { ambientRules } from '../../../model/zone-ambient.ts';
import { bundleDiameterM } from '../../../power/conductor/bundle-diameter.ts';
import type { PlanBook } from '../../plan-book.ts';
import type { SizedConductor } from '../../power/sizing/conductor-sizing.ts';
import { tieCount, tieFor } from '../ties.ts';
import { wireDiameterM } from '../wire-diameter.ts';
import { coverPass, isCovered, outsideInM } from './run-coverings.ts';
import { hasGrommet, isToDrill, isUnmeasured, outsideInHoleM, sharingHole } from './way-holes.ts';

/** Lengths that differ by less are one. */
const sameM = 1e-9;

/** The runs of a job: what lies in each, how thick it is, what protects it on its way. */
export function planRuns(job: Job, sized: ReadonlyMap<string, SizedConductor>, book: PlanBook): PlanRun[] {
  const thick = job.runs.map((run) => {
    const wires = [...sized.values()].filter(({ link }) => link.run === run.id);
    const bundle = bundleDiameterM(diametersOf(job, wires));
    const bundleM = isFault(bundle) ? 0 : book.trace(`runs.${run.id}.bundleM`, bundle);
    return { run, wires, bundleM, passes: planPasses(job, run, bundleM, book) };
  });
  return thick.map((one): PlanRun => {
    const { run, wires, bundleM, passes } = one;
    return {
      id: run.id,
      route: run.routeId,
      title: run.route.title,
      side: run.route.side,
      wires: wires.map(({ link }) => link.id),
      lengthM: routeLengthM(run.route),
      bundleM,
      covering: run.covering,
      passes,
      grommets: run.route.passes.flatMap((pass, at) => {
        if (!hasGrommet(pass)) return [];
        const beside = sharingHole(one, at, thick).flatMap(({ run: { id } }) => (id === run.id ? [] : [id]));
        const grommet = grommetAt(job, pass, outsideInHoleM(job, one, at, thick));
        return [{ ...grommet, stretch: at, ...(beside.length > 0 && { beside }) }];
      }),
    };
  });
}

/** Outside diameters: of each cable once, of every other conductor. */
function diametersOf(job: Job, wires: readonly SizedConductor[]): number[] {
  const cables = new Map<string, number>();
  const single: number[] = [];
  for (const { link, cable } of wires) {
    const part = link.cable ? job.parts[link.cable.part] : undefined;
    const outsideM = part?.kind === 'cable' ? part['outside-diameter'] : undefined;
    if (link.cable && outsideM !== undefined) cables.set(link.cable.id, outsideM);
    else single.push(wireDiameterM(job, cable));
  }
  return [...cables.values(), ...single];
}

/** What covers and holds a run, stretch by stretch. A covering that was asked for and not found is remarked. */
function planPasses(job: Job, run: Run, bundleM: number, book: PlanBook): PlanPass[] {
  const { passes } = run.route;
  const spacingM = job.rules['tie-spacing-vehicle'].value;
  return passes.map(({ zone, length, edge }): PlanPass => {
    const alikeM = passes.reduce(
      (sum, other) => sum + (isCovered(run, other.zone) === isCovered(run, zone) ? other.length : 0),
      0,
    );
    const { part, chosen, reason, fits } = coverPass(job, run, zone, bundleM, alikeM);
    if (!fits) book.remark(noCovering(run, zone, reason), { path: run.path });
    const outsideM = part === null ? bundleM : outsideInM(job, run, { zone, covering: part }, bundleM);
    const tie = bundleM > 0 ? tieFor(job, outsideM, job.rules[ambientRules[zone]].value) : null;
    const ties = bundleM > 0 ? tieCount(length, spacingM) : 0;
    return { zone, lengthM: length, edge, covering: part, chosen, reason, tie, ties };
  });
}

function noCovering({ id }: Run, zone: ZoneKind, reason: string): Remark {
  return {
    rule: 'covering-none-fits',
    level: 'caution',
    of: [id, zone],
    message: `${id} wants a covering in the ${zone}, and the catalogue has none that fits: ${reason}`,
    remedy: 'add a covering that fits to the catalogue, or name one by covering:',
  };
}

/**
 * Lengths of covering to cut for a run: one piece for stretches that follow one another under the same covering.
 */
export function coveringCuts({
  passes = [],
}: Pick<PlanRun, 'passes'>): readonly (readonly [string, number])[] {
  const cuts: [string, number][] = [];
  let before: string | null = null;
  for (const { covering, lengthM } of passes) {
    const last = cuts.at(-1);
    if (covering !== null && covering === before && last) last[1] += lengthM;
    else if (covering !== null) cuts.push([covering, lengthM]);
    before = covering;
  }
  return cuts;
}

/** What guards a bundle at an edge: the vehicle's own grommet where the bundle goes through it, else one of the catalogue. */
function grommetAt(
  job: Job,
  pass: Run['route']['passes'][number],
  outsideM: number,
): PlanRun['grommets'][number] {
  const holeM = pass['through-hole'] ?? null;
  const own = pass['own-grommet'] && holeM !== null && outsideM <= holeM + sameM;
  const part = own || pass['own-grommet'] ? null : grommetFor(job, outsideM, holeM);
  const spec = part === null ? undefined : job.parts[part];
  return {
    zone: pass.zone,
    holeM,
    part,
    ...(spec?.kind === 'grommet' && { madeForM: spec.hole }),
    ...(own && { own }),
    ...(isUnmeasured(pass) && { unmeasured: true as const }),
    ...(isToDrill(pass) && { drilledBefore: pass.behind }),
  };
}

/** The smallest grommet that takes the bundle; in a hole that is there already, only one made for it. */
function grommetFor(job: Job, bundleM: number, holeM: number | null): string | null {
  const fitting = partsOfKind(job.parts, 'grommet')
    .filter(
      ([, { bore, hole }]) => bore >= bundleM - sameM && (holeM === null || Math.abs(hole - holeM) < 0.0005),
    )
    .toSorted(([idA, a], [idB, b]) => a.bore - b.bore || (idA < idB ? -1 : 1));
  return fitting[0]?.[0] ?? null;
}
