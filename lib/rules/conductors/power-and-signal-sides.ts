import { segmentsCross, segmentToSegment } from '../../board/shape/point.ts';
import type { Job, Run } from '../../model/content/resolved-job.ts';
import type { RunWay } from '../../model/content/run-ways.ts';
import type { PlanBoard, PlanRoute, PlanWire } from '../../model/plan/index.ts';
import type { VehicleSide } from '../../model/vocabulary.ts';
import { lastingCurrentsA } from '../../plan/power/operating-points.ts';
import { groupsOf } from '../groups-of.ts';
import { houseRule } from '../house-rule-of.ts';
import { jobWires, routeSpot, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthAskedIn, lengthIn, listed } from '../words.ts';
import { largerBoardText } from './larger-board.ts';

/** The wires that go by a run. */
function wiresOf(about: Case, run: Run): readonly PlanWire[] {
  return jobWires(about).filter((wire) => wire.run === run.id || run.links.includes(wire.link));
}

/**
 * The wires of the supply that carry enough to be heard beside signal: by the greatest current through each at any
 * operating point but the one that only sizes the wiring; where none is known, by what it must be able to carry.
 */
function strongWires(about: Case): ReadonlySet<string> {
  const { job, plan } = about;
  const limitA = houseRule(job, 'power-signal-current').value;
  const throughA = (id: string, neededA: number): number => {
    const currents = lastingCurrentsA(plan.power.points, id);
    return currents.length > 0 ? Math.max(...currents) : neededA;
  };
  const strong = plan.power.conductors.filter(({ id, neededA }) => throughA(id, neededA) >= limitA);
  return new Set(strong.map(({ id }) => id));
}

function sharedZones(a: RunWay, b: RunWay): readonly string[] {
  const others = new Set(b.route.passes.map(({ zone }) => zone));
  return [...new Set(a.route.passes.map(({ zone }) => zone))].filter((zone) => others.has(zone));
}

/** Where two runs share a zone: how near they come there, null where it was not measured. */
interface Meeting {
  readonly zones: readonly string[];
  readonly side: VehicleSide;
  readonly distanceM: number | null;
}

/**
 * How two runs meet: one bundle, or one side of the vehicle in some zones; null where they keep apart. Of runs that go by
 * several routes each is held against each, and the nearest meeting counts, one at an unknown distance before one that
 * keeps apart.
 */
function meeting(a: Run, b: Run): Meeting | null {
  const met = a.ways.flatMap((one) => b.ways.flatMap((other) => meetingOf(one, other) ?? []));
  const inBundle = met.filter(({ distanceM }) => distanceM === 0);
  const unknown = met.filter(({ distanceM }) => distanceM === null);
  const told = [inBundle, unknown, met].find(({ length }) => length > 0) ?? [];
  const [nearest] = told.toSorted((one, other) => (one.distanceM ?? 0) - (other.distanceM ?? 0));
  return nearest ? { ...nearest, zones: [...new Set(told.flatMap(({ zones }) => zones))] } : null;
}

function meetingOf(a: RunWay, b: RunWay): Meeting | null {
  const zones = sharedZones(a, b);
  const { side } = a.route;
  if (a.id === b.id) return { zones, side, distanceM: 0 };
  if (side !== b.route.side || zones.length === 0) return null;
  const apart = zones.map((zone) => apartM(a, b, zone));
  const known = apart.filter((distanceM) => distanceM !== null);
  return { zones, side, distanceM: known.length < apart.length ? null : Math.min(...known) };
}

/** The least distance of two runs in a zone (m), by how far inboard each lies; null where that was not measured. */
function apartM(a: RunWay, b: RunWay, zone: string): number | null {
  const lies = ({ route }: RunWay) =>
    route.passes.filter((pass) => pass.zone === zone).map(({ inboard }) => inboard);
  const distances = lies(a).flatMap((one) =>
    lies(b).map((other) => (one === undefined || other === undefined ? null : Math.abs(one - other))),
  );
  const known = distances.filter((distanceM) => distanceM !== null);
  return known.length < distances.length ? null : Math.min(...known);
}

const sharedSide: Rule = {
  id: 'power-beside-signal',
  judge(about) {
    const { runs } = about.job;
    const { value, from } = houseRule(about.job, 'power-signal-distance');
    const strong = strongWires(about);
    const power = runs.filter((run) => wiresOf(about, run).some(({ id }) => strong.has(id)));
    const signal = runs.filter((run) => wiresOf(about, run).some(({ role }) => role === 'signal'));
    return power.flatMap((a) =>
      signal.flatMap((b): Verdict<'power-beside-signal'>[] => {
        const met = meeting(a, b);
        if (!met || (met.distanceM !== null && met.distanceM >= value - 1e-9)) return [];
        const runsText =
          a.id === b.id ? `power and signal in ${a.id}` : `power in ${a.id} and signal in ${b.id}`;
        return [
          {
            level: 'caution',
            of: [...new Set([b.id, a.id])],
            message: `${runsText} ${metText(about, a, met)} through ${listed(met.zones)}`,
            ...(met.distanceM !== null && { value: met.distanceM }),
            limit: value,
            unit: 'm',
            remedy: `take the signal down the other side; where it can't be, keep ${lengthAskedIn(about.job, routeSpot(a))(value)} apart, cross at a right angle, and write how far inboard each lies, at the passes of both routes in the vehicle's file: { zone: ${met.zones[0] ?? 'sill'}, length: , inboard: 8 in }`,
            ...from,
            path: b.path,
          },
        ];
      }),
    );
  },
};

function metText({ job }: Case, run: Run, { distanceM, side }: Meeting): string {
  if (distanceM === null) return `share the ${side} side, at a distance that is not known,`;
  return distanceM <= 1e-9
    ? 'lie side by side, at no distance,'
    : `share the ${side} side, as near as ${lengthIn(job, routeSpot(run))(distanceM)},`;
}

type Segment = readonly [PlanRoute['points'][number], PlanRoute['points'][number]];

function segmentsOf({ points }: PlanRoute): readonly Segment[] {
  return points.slice(1).flatMap((to, index): Segment[] => {
    const from = points[index];
    return from && Math.hypot(to.xM - from.xM, to.yM - from.yM) > 1e-9 ? [[from, to]] : [];
  });
}

/** How two stretches lie: the sine of the angle between them, and how far they run along each other (m). */
function bearing([a, b]: Segment, [c, d]: Segment): { readonly sine: number; readonly alongM: number } {
  const length = Math.hypot(b.xM - a.xM, b.yM - a.yM);
  const [ux, uy] = [(b.xM - a.xM) / length, (b.yM - a.yM) / length];
  const other = Math.hypot(d.xM - c.xM, d.yM - c.yM);
  const sine = Math.abs(ux * (d.yM - c.yM) - uy * (d.xM - c.xM)) / other;
  const at = (p: Segment[0]) => (p.xM - a.xM) * ux + (p.yM - a.yM) * uy;
  const [from, to] = [Math.min(at(c), at(d)), Math.max(at(c), at(d))];
  return { sine, alongM: Math.max(0, Math.min(length, to) - Math.max(0, from)) };
}

interface Nearness {
  readonly distanceM: number;
  readonly askew: boolean;
}

/**
 * How near two routes come where they run along each other for longer than the house distance (shorter stretches are
 * the way into the terminals of one part), and whether they cross other than at a right angle.
 */
function nearness(one: PlanRoute, other: PlanRoute, houseM: number): Nearness {
  let distanceM = Number.POSITIVE_INFINITY;
  let askew = false;
  for (const a of segmentsOf(one)) {
    for (const b of segmentsOf(other)) {
      const { sine, alongM } = bearing(a, b);
      if (sine < 0.7 && alongM > houseM) distanceM = Math.min(distanceM, segmentToSegment(...a, ...b));
      if (sine > 1e-6 && sine < 0.99 && segmentsCross(...a, ...b)) askew = true;
    }
  }
  return { distanceM, askew };
}

function boardPairs(
  board: PlanBoard,
  strong: ReadonlySet<string>,
): readonly (readonly [PlanRoute, PlanRoute])[] {
  const power = board.routes.filter(({ wire }) => strong.has(wire));
  const signal = board.routes.filter(({ layer }) => layer === 'signal');
  return power.flatMap((a) => signal.map((b) => [a, b] as const));
}

/** A signal that lies too near to a power wire on its board, or crosses it aslant: then without a distance. */
interface NearSignal {
  readonly board: PlanBoard;
  readonly power: string;
  readonly signal: string;
  readonly distanceM: number | null;
}

function nearSignals(about: Case, limit: number): readonly NearSignal[] {
  const strong = strongWires(about);
  return about.plan.boards.flatMap((board) =>
    boardPairs(board, strong).flatMap(([power, signal]): NearSignal[] => {
      const { distanceM, askew } = nearness(power, signal, limit);
      const near = distanceM < limit - 1e-9;
      if (!near && !askew) return [];
      return [{ board, power: power.wire, signal: signal.wire, distanceM: near ? distanceM : null }];
    }),
  );
}

/**
 * How signal and power come apart on a board: by proposed places, or, where these were proposed, by more room where there
 * is any, or over another edge.
 */
function toPart(job: Job, board: PlanBoard, length: (m: number) => string): string {
  const { outline, placements } = board;
  if (placements.some(({ chosen }) => chosen === 'given'))
    return 'leave at: and turn: of the parts out, so that places are proposed which lead signal and power to opposite sides; or write others';
  const [xs, ys] = [outline.map(({ xM }) => xM), outline.map(({ yM }) => yM)];
  const [widthM, heightM] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  const larger = largerBoardText(job, board);
  return `its places are proposed, and on ${length(widthM)} by ${length(heightM)} none was found that leads them apart: ${larger}have the signal leave over another edge, by a route that reaches it`;
}

/** What lies beside one power wire is one cause, and told with the nearest; so is what crosses it. */
const onBoard: Rule = {
  id: 'power-near-signal-on-board',
  judge(about) {
    const { value: limit, from } = houseRule(about.job, 'power-signal-distance');
    const groups = groupsOf(
      nearSignals(about, limit),
      ({ board, power, distanceM }) => `${board.id} ${power} ${distanceM === null}`,
    );
    return groups.flatMap((group): Verdict<'power-near-signal-on-board'>[] => {
      const own = group.toSorted((a, b) => (a.distanceM ?? 0) - (b.distanceM ?? 0));
      const [nearest] = own;
      if (!nearest) return [];
      const { board, power, signal, distanceM } = nearest;
      const signals = own.map((one) => one.signal);
      const length = lengthIn(about.job, { path: `/boards/${board.id}` });
      const several = signals.length > 1;
      const names = `on ${board.id} the ${several ? 'signals' : 'signal'} ${listed(signals)}`;
      return [
        {
          level: 'caution',
          of: [...signals, power, board.id],
          message:
            distanceM === null
              ? `${names} ${several ? 'cross' : 'crosses'} the power ${power} aslant`
              : `${names} ${several ? 'run' : 'runs'} ${length(distanceM)}${several ? ' or more' : ''} beside the power ${power}; ${length(limit)} is asked for`,
          ...(distanceM !== null && { value: distanceM, limit, unit: 'm' }),
          remedy:
            distanceM === null
              ? 'cross at a right angle, over a bridge piece'
              : toPart(about.job, board, length),
          ...from,
          ...wireSpot(about, signal),
        },
      ];
    });
  },
};

export const powerAndSignalRules: readonly Rule[] = [sharedSide, onBoard];
