import type { Job, Run } from '../../../model/content/resolved-job.ts';
import { type RunWay, type Stretch, stretchesOf } from '../../../model/content/run-ways.ts';
import { servedBy, type VehicleRoute } from '../../../model/content/vehicle-route.ts';
import { isFault } from '../../../model/fault.ts';
import { bundleDiameterM } from '../../../power/conductor/bundle-diameter.ts';
import { outsideInM } from './run-coverings.ts';

type Pass = VehicleRoute['passes'][number];

/** A run with how thick it is, and what covers each stretch of it. */
export interface ThickRun {
  readonly run: Run;
  readonly bundleM: number;
  readonly passes: readonly { readonly covering: string | null }[];
}

/** True for a stretch that begins with bare sheet metal round what goes through. */
export function hasEdge(pass: Pass): boolean {
  return pass.edge || isToDrill(pass);
}

/** True for a stretch that begins with a grommet, the vehicle's own or one that goes onto its bare edge. */
export function hasGrommet(pass: Pass): boolean {
  return hasEdge(pass) || pass['own-grommet'] === true;
}

/** True for a stretch whose hole is still to be drilled. */
export function isToDrill(pass: Pass): boolean {
  return !pass.there && !pass['own-grommet'];
}

/** True for a stretch that begins with the vehicle's own grommet, whose bore nobody measured. */
export function isUnmeasured(pass: Pass): boolean {
  return pass['own-grommet'] && pass['through-hole'] === undefined;
}

/**
 * The runs that go through the hole in which stretch `at` of a run begins, in the order of the job, the run among them:
 * those on its route, and those on a route that is the same from a common end up to that hole.
 */
export function sharingHole<T extends Pick<ThickRun, 'run' | 'bundleM'>>(
  { run }: T,
  at: number,
  all: readonly T[],
): readonly T[] {
  return all.filter((other) => other.bundleM > 0 && goesThrough(other.run, run, at));
}

function goesThrough(other: Run, run: Run, at: number): boolean {
  if (other.id === run.id) return true;
  const stretch = stretchesOf(run.ways)[at];
  return stretch !== undefined && other.ways.some((way) => isThrough(way, stretch));
}

function isThrough(other: RunWay, { way, at }: Stretch): boolean {
  if (other.id === way.id) return true;
  const [own, theirs] = [way.route, other.route];
  const isOneEnd = servedBy(own).some((end) => servedBy(theirs).includes(end));
  const isOneEdge =
    own.reaches !== undefined &&
    own.reaches.space === theirs.reaches?.space &&
    own.reaches.edge === theirs.reaches.edge;
  if (!isOneEnd && !isOneEdge) return false;
  const from = own.passes.slice(0, at + 1);
  const to = own.passes.slice(at);
  return (
    (from.length > 1 && alike(from, theirs.passes.slice(0, at + 1))) ||
    (to.length > 1 && alike(to, theirs.passes.slice(-to.length)))
  );
}

function alike(own: readonly Pass[], theirs: readonly Pass[]): boolean {
  return own.length === theirs.length && JSON.stringify(own) === JSON.stringify(theirs);
}

/** True for the run that a hole and its grommet are counted with, of all that go through it: the first of the plan. */
export function countsHole(
  runs: readonly { readonly id: string }[],
  run: string,
  { beside = [] }: { readonly beside?: readonly string[] },
): boolean {
  return firstThrough(runs, run, { beside }) === run;
}

/** The first of the runs that go through a hole, a run and those beside it. */
export function firstThrough(
  runs: readonly { readonly id: string }[],
  run: string,
  { beside = [] }: { readonly beside?: readonly string[] },
): string | undefined {
  return runs.find(({ id }) => id === run || beside.includes(id))?.id;
}

/** What goes through a hole, all runs with their coverings, as one bundle (m). */
export function outsideInHoleM(
  job: Pick<Job, 'parts' | 'rules'>,
  one: ThickRun,
  at: number,
  all: readonly ThickRun[],
): number {
  const { zone } = one.run.route.passes[at] ?? { zone: null };
  if (zone === null) return one.bundleM;
  const outsides = sharingHole(one, at, all).map(({ run, bundleM, passes }) => {
    const covering = coveringThere(one, at, run, passes) ?? run.covering;
    return outsideInM(job, run, { zone, covering }, bundleM);
  });
  const [only, second] = outsides;
  if (second === undefined) return only ?? one.bundleM;
  const together = bundleDiameterM(outsides);
  return isFault(together) ? outsides.reduce((sum, outsideM) => sum + outsideM, 0) : together.value;
}

/** The covering of another run where it goes through the hole of this one: at the stretch that is the same. */
function coveringThere(
  one: ThickRun,
  at: number,
  run: Run,
  passes: ThickRun['passes'],
): string | null | undefined {
  const pass = JSON.stringify(one.run.route.passes[at]);
  const there = run.route.passes.findIndex((other) => JSON.stringify(other) === pass);
  return passes[run.id === one.run.id ? at : there]?.covering;
}
