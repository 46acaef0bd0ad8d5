import { type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanFuse } from '../../model/plan/index.ts';
import type { RemarkBody } from '../../model/remark.ts';
import { houseRule } from '../house-rule-of.ts';
import { type LiveEdge, type LiveSide, liveSide } from '../live-side.ts';
import { deviceIdOf, deviceOf, endsOf, fuseSpot, hasRole, jobWires, partOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn, listed } from '../words.ts';
import { sheathLines } from './sheath-lines.ts';

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
  // A charger gives no more than its conductors carry: the fuse of its output stands where the battery is.
  const unbounded = side.sources.filter(
    (source) => deviceOf(about.job, deviceIdOf(source))?.spec?.kind !== 'charger',
  );
  return [...unbounded, ...taps].filter((terminal) => touched.has(terminal));
}

interface Walk {
  readonly lengthM: number;
  readonly wires: readonly string[];
}

/** The shortest walk from a terminal to every other over unfused edges, but not over one of them. */
function walksFrom(
  start: string,
  edges: readonly LiveEdge[],
  without: LiveEdge | null = null,
): ReadonlyMap<string, Walk> {
  const best = new Map<string, Walk>([[start, { lengthM: 0, wires: [] }]]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const edge of edges) {
      const { kind, ends, wire } = edge;
      if (kind === 'fuse' || edge === without) continue;
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
  return best;
}

const nearestTo = (terminals: readonly string[], walks: ReadonlyMap<string, Walk>): Walk | undefined =>
  terminals.flatMap((end) => walks.get(end) ?? []).toSorted((a, b) => a.lengthM - b.lengthM)[0];

/**
 * From a beginning to each fuse that it meets first, along the job's wires and through bars: the shortest way, and
 * the shortest through every wire beside it, since of leads side by side each may be the one that shorts.
 */
function waysFrom(source: string, edges: readonly LiveEdge[]): Way[] {
  const walks = walksFrom(source, edges);
  return edges.flatMap(({ kind, id, ends }): Way[] => {
    const near = kind === 'fuse' ? nearestTo(ends, walks) : undefined;
    if (!near) return [];
    const ways: Way[] = [{ fuse: id, source, ...near }];
    for (const edge of edges) {
      const { wire } = edge;
      if (!wire || ways.some(({ wires }) => wires.includes(wire.id))) continue;
      const through = wayThrough(source, edge, ends, edges);
      if (through) ways.push({ fuse: id, source, ...through });
    }
    return ways;
  });
}

/** The shortest way from a source to a fuse that passes a wire; none where the wire leads elsewhere. */
function wayThrough(
  source: string,
  edge: LiveEdge,
  fuseEnds: readonly string[],
  edges: readonly LiveEdge[],
): Walk | undefined {
  const before = walksFrom(source, edges, edge);
  return [edge.ends, [edge.ends[1], edge.ends[0]] as const]
    .flatMap(([from, to]): Walk[] => {
      const here = before.get(from);
      const onward = here && nearestTo(fuseEnds, walksFrom(to, edges, edge));
      if (!here || !onward || !edge.wire) return [];
      const wires = [...new Set([...here.wires, edge.wire.id, ...onward.wires])];
      return [{ lengthM: here.lengthM + edge.wire.lengthM + onward.lengthM, wires }];
    })
    .toSorted((a, b) => a.lengthM - b.lengthM)[0];
}

/** Every unfused way of the job: from each source or tap to each fuse that stands first behind it. */
export function unfusedWays(about: Case): readonly Way[] {
  const side = liveSide(about);
  const edges = side.edges.filter(({ wire }) => wire === null || wire.origin === 'job');
  return beginnings(about, side).flatMap((source) => waysFrom(source, edges));
}

/** Loom, sleeve, conduit or heat-shrink; tape alone protects little. */
function isSheath(job: Job, covering: string): boolean {
  const part = partOf(job, covering);
  return part?.kind === 'covering' ? part.form !== 'tape' : covering !== 'tape';
}

/** How much of a wire lies bare (m): what is sheathed on its run does not cover its tails and loops. */
function bareM({ job, plan }: Case, id: string): number {
  const wire = plan.wires.find((one) => one.id === id);
  if (!wire) return 0;
  const run = plan.runs.find((one) => one.id === wire.run);
  if (!run) return wire.covering.some((name) => isSheath(job, name)) ? 0 : wire.lengthM;
  const passes = run.passes ?? [run];
  const sheathedM = passes.reduce(
    (sum, { covering, lengthM }) => sum + (covering !== null && isSheath(job, covering) ? lengthM : 0),
    0,
  );
  return Math.max(0, wire.lengthM - sheathedM);
}

/** A length that is no more than the rounding of a sum (m). */
const nothingM = 1e-6;

function judgeWay(about: Case, fuse: PlanFuse, way: Way, all: readonly Way[]): Verdict<'fuse-distance'>[] {
  const { job } = about;
  const good = houseRule(job, 'fuse-distance-good');
  const loomed = houseRule(job, 'fuse-distance-loomed');
  const sheathed = houseRule(job, 'fuse-distance-sheathed');
  const bare = way.wires.filter((id) => bareM(about, id) > nothingM);
  const covered = way.wires.length > 0 && bare.length === 0;
  const over = (limitM: number) => way.lengthM > limitM + 1e-9;
  if (!over(good.value) || (covered && !over(loomed.value))) return [];
  const [limit, stops] = over(sheathed.value)
    ? [sheathed, true]
    : over(loomed.value)
      ? [loomed, !covered]
      : [good, false];
  const length = lengthIn(job, ...way.wires.map((id) => wireSpot(about, id)));
  const wholeBareM = bare.reduce((sum, id) => sum + bareM(about, id), 0);
  const how = covered ? 'sheathed all the way' : `${length(wholeBareM)} of it bare`;
  return [
    {
      level: stops ? 'stop' : 'caution',
      of: [fuse.id, way.source, ...way.wires],
      message: `the fuse ${fuse.id} stands ${length(way.lengthM)} along the conductor from ${way.source}, ${how}; up to ${length(good.value)} is good, up to ${length(loomed.value)} in loom, up to ${length(sheathed.value)} sheathed all the way with care`,
      value: way.lengthM,
      limit: limit.value,
      unit: 'm',
      ...withSheath(about, nearerFuse(way, all), covered || over(sheathed.value) ? [] : bare),
      ...limit.from,
      ...fuseSpot(job, fuse),
    },
  ];
}

/** What moves a fuse nearer, and the lines that cover what lies bare before it, its length kept. */
function withSheath(
  about: Case,
  nearer: string,
  bare: readonly string[],
): Pick<RemarkBody, 'remedy' | 'writesAt'> {
  if (bare.length === 0) return { remedy: nearer };
  const told = `${nearer}, or run ${listed(bare)} in loom or conduit from end to end, tails and loops with it`;
  const lines = bare.map((id) => sheathLines(about, id)).filter((one) => one !== null);
  if (lines.length < bare.length) return { remedy: told };
  return {
    remedy: `${told}: write ${lines.map(({ text }) => text).join('; and ')}`,
    writesAt: lines.flatMap(({ writesAt }) => writesAt),
  };
}

/** A fuse that stands nearer to another source stays there: the far one gets its own. */
function nearerFuse({ source, lengthM }: Way, all: readonly Way[]): string {
  const servesAnother = all.some((other) => other.source !== source && other.lengthM < lengthM);
  return servesAnother
    ? `put a fuse at ${deviceIdOf(source)} too`
    : `move the fuse nearer to ${deviceIdOf(source)}`;
}

/** The longest way from the source that the plan names is at least as long as the plan says. */
function asPlanned(fuse: PlanFuse, way: Way, all: readonly Way[]): Way {
  if (fuse.source !== deviceIdOf(way.source) || fuse.distanceM === null) return way;
  const longestM = Math.max(
    ...all.filter(({ source }) => source === way.source).map(({ lengthM }) => lengthM),
  );
  return way.lengthM < longestM ? way : { ...way, lengthM: Math.max(longestM, fuse.distanceM) };
}

/** Fuses that stand farther from a source than is good, one verdict for each way. */
function farFuses(about: Case): readonly Verdict<'fuse-distance'>[] {
  const ways = unfusedWays(about);
  return about.plan.power.fuses.flatMap((fuse) => {
    if (deviceOf(about.job, fuse.item)?.origin !== 'job') return [];
    // Each source drives its own fault along its own way: one that is near excuses none that is far.
    const own = ways.filter((way) => way.fuse === fuse.id);
    return own.flatMap((way) => judgeWay(about, fuse, asPlanned(fuse, way, own), own));
  });
}

/** Those that stop the job: what lies before them is as good as unfused. */
export function distantFuses(about: Case): readonly Verdict<'fuse-distance'>[] {
  return farFuses(about).filter(({ level }) => level === 'stop');
}

const fuseDistance: Rule = { id: 'fuse-distance', judge: farFuses };

export const fuseAtSourceRules: readonly Rule[] = [fuseDistance];
