import { barriersInPlace } from '../../board/propose/wires-in-place.ts';
import { type BoardRemark, length, phrase } from '../../board/remark.ts';
import { fewWires } from '../../board/route/fewer-crossings.ts';
import type { Routing, RoutingTask } from '../../board/route/routing.ts';
import { routingHouse } from '../../board/route/routing-house.ts';
import type { Barrier } from '../../board/route/track-grid.ts';
import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { ConductorRole, Edge } from '../../model/vocabulary.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { boardFixings, fixingHeads } from './board-shape.ts';
import { routingStep } from './board-steps.ts';
import { type BoardWire, boardWires, madeLengthM, routeWiresOf } from './board-wires.ts';
import { withEdgeInWay } from './edge-in-way.ts';
import type { LaidBoard } from './laid-board.ts';
import { ribBarriers } from './ribs/rib-barriers.ts';
import { withThinnerForBend } from './thinner-for-bend.ts';

/** The wires of a board as they run on it. */
export interface RoutedBoard {
  readonly routes: PlanBoard['routes'];
  readonly crossings: number;
  /** Crossings of the first way to lay all wires, and the paths that were searched for. */
  readonly firstCrossings: number;
  readonly pathSearches: number;
  readonly exits: PlanBoard['exits'];
  /** True where many wires lie as drafted, which are still to be dressed. */
  readonly isDraft: boolean;
  /** Wires that found no way, bend too tightly, or are shorter than their way. */
  readonly faults: readonly BoardRemark[];
}

/** How wires are laid: as they are to be, or where they are many only so that their lengths are known; and what keeps the result. */
export interface Laying {
  readonly isDraft: boolean;
  readonly keep: Keep;
}

/** Routes the wires of every board, with the diameters that their sizes have now. */
export function routeBoards(
  job: Job,
  laid: readonly LaidBoard[],
  sized: ReadonlyMap<string, SizedConductor>,
  roles: ReadonlyMap<string, ConductorRole>,
  laying: Laying,
): RoutedBoard[] {
  return laid.map((board) => routeBoard(job, board, sized, roles, laying));
}

function routeBoard(
  job: Job,
  laid: LaidBoard,
  sized: ReadonlyMap<string, SizedConductor>,
  roles: ReadonlyMap<string, ConductorRole>,
  laying: Laying,
): RoutedBoard {
  const { board } = laid;
  const wires = boardWires(job, board, roles);
  const task = boardTask(job, laid, wires, sized);
  const house = routingHouse((name) => job.rules[name].value);
  const routing = laying.keep(routingStep, { task, house, isDraft: laying.isDraft });
  const faults = withEdgeInWay(job, routing.faults, { board, shape: laid.shape, wires, tasks: task.wires });
  return {
    routes: planRoutes(routing, task, wires, roles),
    crossings: routing.crossings.length,
    firstCrossings: routing.firstCrossings,
    pathSearches: routing.searches,
    isDraft: laying.isDraft && task.wires.length > fewWires,
    exits: task.wires.flatMap(({ id, from, to }): PlanBoard['exits'] => {
      const route = routing.routes.find(({ wire }) => wire === id);
      const [first, last] = [route?.points[0], route?.points.at(-1)];
      return [
        ...('exit' in from && first ? [exit(id, from.exit, first)] : []),
        ...('exit' in to && last ? [exit(id, to.exit, last)] : []),
      ];
    }),
    faults: [
      ...withThinnerForBend(job, faults, { wires, tasks: task.wires, routes: routing.routes, sized }),
      ...shortLengths(job, routing, wires),
    ],
  };
}

/** What is routed on a board: its wires with the diameters that they have now, past what stands on it. */
export function boardTask(
  job: Job,
  laid: LaidBoard,
  wires: readonly BoardWire[],
  sized: ReadonlyMap<string, SizedConductor>,
): RoutingTask {
  const tasks = routeWiresOf(job, laid.board, wires, laid, (link) => sized.get(link)?.cable);
  return { shape: laid.shape, barriers: barriersOf(job, laid), wires: tasks };
}

function exit(wire: string, edge: Edge, { xM, yM }: { xM: number; yM: number }): PlanBoard['exits'][number] {
  return { wire, edge, xM, yM };
}

/** Wires whose given or made length does not reach along their way on the board. */
function shortLengths(job: Job, { routes }: Routing, wires: readonly BoardWire[]): BoardRemark[] {
  return routes.flatMap(({ wire, lengthM }) => {
    const along = wires.find(({ link }) => link.id === wire)?.along ?? [];
    return along.flatMap((link): BoardRemark[] => {
      const hasM = madeLengthM(job, link);
      // What lies in a run too is held against both together.
      if (link.run !== null || hasM === undefined || hasM >= lengthM) return [];
      return [
        {
          rule: 'length-short-of-way',
          level: 'stop',
          of: [link.id],
          message: phrase`${link.id} is ${length('length-left', hasM)} long, but its way on the board alone is ${length('way', lengthM)}`,
          value: hasM,
          limit: lengthM,
          unit: 'm',
          ...longerOnBoard(job, link, lengthM),
        },
      ];
    });
  });
}

/** A written length that is too short on the board is written as long as its way at least. */
function longerOnBoard(
  { shop }: Pick<Job, 'shop'>,
  { given, path }: Link,
  wayM: number,
): Pick<BoardRemark, 'remedy' | 'advice'> {
  if (given?.length === undefined)
    return {
      remedy: phrase`take a lead of ${length('room-asked', wayM)} or more, or move what it joins nearer`,
    };
  const value = tapeText(Math.ceil(wayM * 1000 - 1e-6) / 1000, shop.units);
  return {
    remedy: `leave length: out to have it measured; or write length: ${value} or more, its loops with it`,
    advice: [[{ path: `${path}/length`, value }]],
  };
}

/** Parts and ribs that stand on the board, and the heads of its fixings. Wires pass under what is raised. */
function barriersOf(job: Job, laid: LaidBoard): Barrier[] {
  return [...barriersInPlace(laid), ...fixedBarriers(job, laid)];
}

/** What wires go round wherever the parts stand: ribs, and the heads of fixings. */
export function fixedBarriers(job: Job, { board, ribs }: Pick<LaidBoard, 'board' | 'ribs'>): Barrier[] {
  const heads = fixingHeads(boardFixings(board, job.parts)).map(({ id, radiusM, ...centre }): Barrier => {
    return { id, centre, radiusM };
  });
  return [...ribBarriers(ribs), ...heads];
}

/** A route by each wire that lies on it: those of a pair or a cable run together. */
function planRoutes(
  { routes }: Routing,
  task: Pick<RoutingTask, 'wires'>,
  wires: readonly BoardWire[],
  roles: ReadonlyMap<string, ConductorRole>,
): PlanBoard['routes'] {
  return routes.map(({ wire, points, lengthM, bends }) => {
    const own = wires.find(({ link }) => link.id === wire);
    const asked = task.wires.find(({ id }) => id === wire);
    return {
      wire,
      along: own?.along.map(({ id }) => id) ?? [wire],
      points: points.map(({ xM, yM }) => ({ xM, yM })),
      lengthM,
      layer: roles.get(wire) ?? 'control',
      bends,
      diameterM: asked?.diameterM ?? null,
      bendRadiusM: asked?.bendRadiusM ?? null,
    };
  });
}
