import type { OpenWire } from '../../board/route/port-choice.ts';
import type { RouteWire } from '../../board/route/route.ts';
import { routingHouse } from '../../board/route/routing-house.ts';
import { type Job, type Link, type OpenEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import type { Settled } from '../settle-sizes.ts';
import { boardTask } from './board-routes.ts';
import { portStep } from './board-steps.ts';
import { type BoardWire, boardWires, routeWiresOf } from './board-wires.ts';
import type { LaidBoard } from './laid-board.ts';

/** A job with the ports of its open ends chosen, and how each was. */
export interface PortedJob {
  readonly job: Job;
  /** The port of each open end by its id path, such as `ports.ground-front.to`. */
  readonly chosen: ReadonlyMap<string, Traced<string>>;
}

/** True where a link of the job leaves open which of several like ports it takes. */
export function hasOpenPorts({ links }: Pick<Job, 'links'>): boolean {
  return links.some(({ open }) => open !== undefined);
}

/** Chooses the open ports of every board, with everything placed and sized, so that its wires cross least. */
export function withChosenPorts(
  job: Job,
  { laid, all }: Pick<Settled, 'laid' | 'all'>,
  roles: ReadonlyMap<string, ConductorRole>,
  keep: Keep,
): PortedJob {
  const chosen = new Map<string, Traced<string>>();
  let ported = job;
  for (const board of laid) {
    const now = ported;
    const wires = boardWires(now, board.board, roles);
    const open = wires.flatMap((wire) => openWire(now, board, wire, all) ?? []);
    if (open.length === 0) continue;
    const choice = keep(portStep, {
      task: boardTask(now, board, wires, all),
      open: open.map(({ wire }) => wire),
      house: routingHouse((name) => now.rules[name].value),
    });
    for (const { wire, links } of open) {
      const link = links[choice.options[wire.id] ?? wire.first];
      if (!link) continue;
      ported = { ...ported, links: ported.links.map((own) => (own.id === link.id ? link : own)) };
      for (const { end, ports } of endsOn(board, link))
        chosen.set(`ports.${link.id}.${end}`, portTrace(link, end, ports, choice));
    }
  }
  return { job: ported, chosen };
}

interface OpenLink {
  readonly wire: OpenWire;
  /** The link as each option has it. */
  readonly links: readonly Link[];
}

/** A wire of a board whose ports are open there, at every port that it may take; null for any other. */
function openWire(
  job: Job,
  board: LaidBoard,
  { link, along, layer }: BoardWire,
  all: ReadonlyMap<string, SizedConductor>,
): OpenLink | null {
  const ends = endsOn(board, link);
  if (ends.length === 0 || along.length > 1) return null;
  const links = ends.reduce<readonly Link[]>(
    (options, { end, ports }) =>
      options.flatMap((option) =>
        ports.map((terminal): Link => ({ ...option, [end]: { device: option[end].device, terminal } })),
      ),
    [link],
  );
  const laid = links.flatMap((option): { readonly link: Link; readonly wire: RouteWire }[] => {
    const [wire] = routeWiresOf(job, board.board, [{ link: option, along: [option], layer }], board, (id) => {
      return all.get(id)?.cable;
    });
    return wire ? [{ link: option, wire }] : [];
  });
  const first = laid.findIndex((one) => portsOf(one.link, ends) === portsOf(link, ends));
  if (first < 0) return null;
  return {
    wire: {
      id: link.id,
      first,
      options: laid.map(({ link: option, wire: { from, to } }) => {
        return { ports: ends.map(({ end }) => terminalId(option[end])), from, to };
      }),
    },
    links: laid.map((one) => one.link),
  };
}

function endsOn({ items }: LaidBoard, link: Link): readonly OpenEnd[] {
  return (link.open ?? []).filter(({ end }) => items.some(({ id }) => id === link[end].device));
}

function portsOf(link: Link, ends: readonly OpenEnd[]): string {
  return ends.map(({ end }) => link[end].terminal).join(' ');
}

function portTrace(
  link: Link,
  end: OpenEnd['end'],
  ports: readonly string[],
  { crossings, firstCrossings }: { readonly crossings: number; readonly firstCrossings: number },
): Traced<string> {
  return traced(link[end].terminal, '', {
    rule: 'port-choice',
    formula:
      'the port at which the wires of the board, as laid, cross least; as the job lists them where that does',
    citation: 'house judgement, no source',
    mark: 'cp',
    inputs: [
      ['like ports', ports.join(', ')],
      ['crossings on the board', crossings],
      ['crossings with the first ports', firstCrossings],
    ],
  });
}
