import type { PartOf } from '../model/kinds/index.ts';
import type { PlanRun } from '../model/plan/index.ts';
import type { Job, Run } from '../model/resolved-job.ts';
import { bundleDiameterM } from '../power/bundle.ts';
import { isPowerFault } from '../power/traced.ts';
import { wireDiameterM } from './board-wires.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import type { PlanBook } from './plan-book.ts';

/** The runs of a job: what lies in each, how thick it is, what protects it on its way. */
export function planRuns(job: Job, sized: ReadonlyMap<string, SizedConductor>, book: PlanBook): PlanRun[] {
  return job.runs.map((run) => {
    const wires = [...sized.values()].filter(({ link }) => link.run === run.id);
    const bundle = bundleDiameterM(diametersOf(job, wires));
    const bundleM = isPowerFault(bundle) ? 0 : book.trace(`runs.${run.id}.bundleM`, bundle);
    return {
      id: run.id,
      route: run.routeId,
      title: run.route.title,
      side: run.route.side,
      wires: wires.map(({ link }) => link.id),
      lengthM: run.route.passes.reduce((sum, { length }) => sum + length, 0),
      bundleM,
      covering: run.covering,
      grommets: run.route.passes.flatMap((pass) => {
        if (!pass.edge) return [];
        const holeM = pass['through-hole'] ?? null;
        return [{ zone: pass.zone, holeM, part: grommetFor(job, bundleM + coveringWallM(run), holeM) }];
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

/** Both walls of a covering; 1 mm each where it has one, common practice. */
function coveringWallM({ covering }: Run): number {
  return covering === null ? 0 : 0.002;
}

/** The smallest grommet that takes the bundle; in a hole that is there already, only one made for it. */
function grommetFor(job: Job, bundleM: number, holeM: number | null): string | null {
  const fitting = Object.entries(job.parts)
    .flatMap(([id, part]): [string, PartOf<'grommet'>][] => (part.kind === 'grommet' ? [[id, part]] : []))
    .filter(([, { bore, hole }]) => bore >= bundleM && (holeM === null || Math.abs(hole - holeM) < 0.0005))
    .toSorted(([idA, a], [idB, b]) => a.bore - b.bore || (idA < idB ? -1 : 1));
  return fitting[0]?.[0] ?? null;
}
