import type { PlanFuse } from '../model/plan/index.ts';
import { terminalId } from '../model/resolved-job.ts';
import { type LiveEdge, type LiveSide, liveSide } from './live-side.ts';
import { deviceIdOf, deviceOf, endsOf, fuseSpot, hasRole, jobWires, partOf } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { defaultSource, houseRule } from './source.ts';
import { lengthIn, listed } from './words.ts';

/** The way from a source to a fuse: how long, along which wires. */
interface Way {
  readonly fuse: string;
  readonly source: string;
  readonly lengthM: number;
  readonly wires: readonly string[];
}

/** Where the job's own live wires begin: posts of sources, and terminals of the vehicle that the job taps. */
function beginnings(about: Case, side: LiveSide): readonly string[] {
  const touched = new Set(jobWires(about).flatMap(endsOf));
  const fusedEnds = new Set(side.edges.flatMap(({ kind, ends }) => (kind === 'fuse' ? [ends[1]] : [])));
  const taps = about.job.devices
    .filter(({ origin }) => origin === 'vehicle')
    .flatMap(({ id, facts }) =>
      Object.keys(facts.terminals).map((terminal) => terminalId({ device: id, terminal })),
    )
    .filter(
      (terminal) =>
        hasRole(about.job, terminal, 'feed-in', 'feed-out', 'supply-positive') && !fusedEnds.has(terminal),
    );
  return [...side.sources, ...taps].filter((terminal) => touched.has(terminal));
}

/** The shortest way from a beginning to each fuse that it meets first, along the job's wires and through bars. */
function waysFrom(source: string, edges: readonly LiveEdge[]): Way[] {
  const best = new Map<string, { readonly lengthM: number; readonly wires: readonly string[] }>([
    [source, { lengthM: 0, wires: [] }],
  ]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { kind, ends, wire } of edges) {
      if (kind === 'fuse') continue;
      for (const [from, to] of [ends, [ends[1], ends[0]] as const]) {
        const here = best.get(from);
        if (!here) continue;
        const lengthM = here.lengthM + (wire?.lengthM ?? 0);
        if (lengthM >= (best.get(to)?.lengthM ?? Number.POSITIVE_INFINITY)) continue;
        best.set(to, { lengthM, wires: wire ? [...here.wires, wire.id] : here.wires });
        grew = true;
      }
    }
  }
  return edges.flatMap(({ kind, id, ends }): Way[] => {
    if (kind !== 'fuse') return [];
    const near = ends.flatMap((end) => best.get(end) ?? []).toSorted((a, b) => a.lengthM - b.lengthM)[0];
    return near ? [{ fuse: id, source, ...near }] : [];
  });
}

/** Fuses that stand first behind a source, each with its longest way from one. */
export function firstFuses(about: Case): readonly Way[] {
  const side = liveSide(about);
  const edges = side.edges.filter(({ wire }) => wire === null || wire.origin === 'job');
  const ways = beginnings(about, side).flatMap((source) => waysFrom(source, edges));
  const farthest = new Map<string, Way>();
  for (const way of ways)
    if (way.lengthM >= (farthest.get(way.fuse)?.lengthM ?? 0)) farthest.set(way.fuse, way);
  return [...farthest.values()];
}

/** A wire in loom, sleeve, conduit or heat-shrink; tape alone protects little. */
function isSheathed({ job, plan }: Case, id: string): boolean {
  const covering = plan.wires.find((wire) => wire.id === id)?.covering ?? [];
  return covering.some((name) => {
    const part = partOf(job, name);
    return part?.kind === 'covering' ? part.form !== 'tape' : name !== 'tape';
  });
}

function judgeWay(about: Case, fuse: PlanFuse, way: Way): Verdict[] {
  const { job } = about;
  const good = houseRule(job, 'fuse-distance-good');
  const loomed = houseRule(job, 'fuse-distance-loomed');
  const sheathed = houseRule(job, 'fuse-distance-sheathed');
  const covered = way.wires.length > 0 && way.wires.every((id) => isSheathed(about, id));
  const over = (limitM: number) => way.lengthM > limitM + 1e-9;
  if (!over(good.value) || (covered && !over(loomed.value))) return [];
  const [limit, stops] = over(sheathed.value)
    ? [sheathed, true]
    : over(loomed.value)
      ? [loomed, !covered]
      : [good, false];
  const length = lengthIn(job);
  return [
    {
      level: stops ? 'stop' : 'caution',
      of: [fuse.id, way.source, ...way.wires],
      message: `the fuse ${fuse.id} stands ${length(way.lengthM)} along the conductor from ${way.source}${covered ? ', sheathed all the way' : ', not sheathed all the way'}; up to ${length(good.value)} is good, up to ${length(loomed.value)} in loom, up to ${length(sheathed.value)} sheathed all the way with care`,
      value: way.lengthM,
      limit: limit.value,
      unit: 'm',
      remedy: `move the fuse nearer to ${deviceIdOf(way.source)}${covered ? '' : `, or run ${listed(way.wires)} in loom or conduit all the way`}`,
      ...limit.from,
      ...fuseSpot(job, fuse),
    },
  ];
}

const fuseDistance: Rule = {
  id: 'fuse-distance',
  asks: 'A fuse stands near its source, measured along the conductor: 7 in is good, 18 in in loom, 40 in sheathed all the way.',
  levels: ['stop', 'caution'],
  ...defaultSource('fuse-distance-sheathed'),
  judge(about) {
    const ways = firstFuses(about);
    return about.plan.power.fuses.flatMap((fuse) => {
      if (deviceOf(about.job, fuse.item)?.origin !== 'job') return [];
      const own = ways.find((way) => way.fuse === fuse.id);
      if (!own) return [];
      const { distanceM } = fuse;
      const lengthM = Math.max(own.lengthM, fuse.source === deviceIdOf(own.source) ? (distanceM ?? 0) : 0);
      return judgeWay(about, fuse, { ...own, lengthM });
    });
  },
};

export const fuseAtSourceRules: readonly Rule[] = [fuseDistance];
