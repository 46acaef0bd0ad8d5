import { type Device, terminalId } from '../../model/content/resolved-job.ts';
import type { OperatingPoint, PlanFuse } from '../../model/plan/index.ts';
import { type LiveSide, liveSide } from '../live-side.ts';
import { deviceSpot } from '../look-up.ts';
import { ratedPoint } from '../operating-point.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed } from '../words.ts';
import { fusesAt } from './fuses-side-by-side.ts';

/** A current that flows at an operating point (A). */
interface Flow {
  readonly point: OperatingPoint;
  readonly currentA: number;
}

/** What the wires at a terminal bring in less what they take away (A); null where the point has no solution. */
function inflowA({ plan }: Case, point: OperatingPoint, terminal: string): number | null {
  const wires = new Set(plan.wires.map(({ id }) => id));
  let sumA = 0;
  for (const { of, from, to, currentA } of point.elements) {
    if (!wires.has(of) || (from !== terminal && to !== terminal)) continue;
    if (currentA === undefined) return null;
    sumA += to === terminal ? currentA : -currentA;
  }
  return sumA;
}

/** What flows through a part at every operating point that has a solution: the sum that comes in at its terminals. */
function flowsThrough(about: Case, { id, facts }: Device): Flow[] {
  const terminals = Object.keys(facts.terminals).map((terminal) => terminalId({ device: id, terminal }));
  return about.plan.power.points.flatMap((point): Flow[] => {
    const currents = terminals.map((terminal) => inflowA(about, point, terminal));
    if (currents.some((currentA) => currentA === null)) return [];
    return [{ point, currentA: currents.reduce<number>((sum, each) => sum + Math.max(0, each ?? 0), 0) }];
  });
}

const largest = (flows: readonly Flow[]): Flow | undefined =>
  flows.toSorted((a, b) => b.currentA - a.currentA)[0];

/** The fuses that let current into a distribution part. */
function fusesBefore(about: Case, side: LiveSide, { id, facts }: Device): readonly PlanFuse[] {
  const inlets = Object.keys(facts.terminals).filter(
    (terminal) => facts.terminals[terminal]?.role === 'feed-in',
  );
  const before = inlets.flatMap((terminal) => fusesAt(about, side, terminalId({ device: id, terminal })));
  return [...new Set(before)].filter(({ item }) => item !== id);
}

const isOver = (currentA: number, limitA: number): boolean => currentA > limitA * (1 + 1e-9);

/** The current of a distribution part against what it is made for, with the fuses that let current into it. */
function judgePart(
  about: Case,
  device: Device,
  limit: number,
  before: readonly PlanFuse[],
): Verdict<'distribution-over-current'>[] {
  const { id } = device;
  const flows = flowsThrough(about, device);
  const rated = flows.find(({ point }) => point === ratedPoint(about))?.currentA ?? 0;
  const behindA = about.plan.power.fuses
    .filter(({ item }) => item === id)
    .reduce((sum, fuse) => sum + fuse.ratedA, 0);
  const ratedA = Math.max(rated, behindA);
  const base = { limit, unit: 'A', ...deviceSpot(about.job, id) } as const;
  if (isOver(ratedA, limit))
    return [
      {
        ...base,
        level: 'stop',
        of: [id, ...before.map((fuse) => fuse.id)],
        message: `${ampsDrawn(ratedA)} flow through ${id} at rated power, and it is made for ${amps(limit)}`,
        value: ratedA,
        remedy: 'take a larger distribution part, or feed part of the load another way',
      },
    ];
  const letsInA = before.reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0);
  if (isOver(letsInA, limit)) return [letsInTooMuch(base, id, letsInA, before)];
  const most = largest(flows);
  if (!most || !isOver(most.currentA, limit)) return [];
  return [
    {
      ...base,
      level: 'caution',
      of: [id, most.point.name],
      message: `${most.point.title}: ${ampsDrawn(most.currentA)} flow through ${id}, and it is made for ${amps(limit)}`,
      value: most.currentA,
      remedy: 'take a larger distribution part, or feed part of the load another way',
    },
  ];
}

function letsInTooMuch(
  base: Pick<Verdict<'distribution-over-current'>, 'path'> & {
    readonly limit: number;
    readonly unit: string;
  },
  id: string,
  letsInA: number,
  before: readonly PlanFuse[],
): Verdict<'distribution-over-current'> {
  const names = before.map((fuse) => fuse.id);
  const one = before.length === 1;
  const fuses = one
    ? `the fuse ${names[0] ?? ''} before it lets`
    : `the fuses ${listed(names)} before it let`;
  return {
    ...base,
    level: 'caution',
    of: [id, ...names],
    message: `${id} is made for ${amps(base.limit)}, and ${fuses} ${ampsDrawn(letsInA)} through`,
    value: letsInA,
    remedy: `take a larger distribution part, or ${one ? 'a smaller fuse' : 'smaller fuses'} before it`,
  };
}

/** The ports of a distribution part whose maker tells what each carries. */
function judgePorts(about: Case, { id, facts }: Device): Verdict<'distribution-over-current'>[] {
  return Object.entries(facts.terminals).flatMap(
    ([name, { current: limit }]): Verdict<'distribution-over-current'>[] => {
      const terminal = terminalId({ device: id, terminal: name });
      if (limit === undefined) return [];
      const flows = about.plan.power.points.map((point): Flow => {
        return { point, currentA: Math.abs(inflowA(about, point, terminal) ?? 0) };
      });
      const rated = flows.find(({ point }) => point === ratedPoint(about));
      const over = rated && isOver(rated.currentA, limit) ? rated : largest(flows);
      if (!over || !isOver(over.currentA, limit)) return [];
      return [
        {
          level: over === rated ? 'stop' : 'caution',
          of: [id, terminal, over.point.name],
          message: `${over.point.title}: ${ampsDrawn(over.currentA)} flow through ${terminal}, and that port is made for ${amps(limit)}`,
          value: over.currentA,
          limit,
          unit: 'A',
          remedy: 'share the current between two ports, or take a part with larger ones',
          ...deviceSpot(about.job, id),
        },
      ];
    },
  );
}

/** What flows into a distribution part, fused or plain, live or ground: its bar must carry it, and so must its ports. */
export const distributionOverCurrent: Rule = {
  id: 'distribution-over-current',
  judge(about) {
    const side = liveSide(about);
    return about.job.devices.flatMap((device): Verdict<'distribution-over-current'>[] => {
      const { spec, origin } = device;
      if (spec?.kind !== 'distribution' || origin !== 'job') return [];
      return [
        ...judgePart(about, device, spec.current, fusesBefore(about, side, device)),
        ...judgePorts(about, device),
      ];
    });
  },
};
