import { type Device, type Job, terminalId } from '../model/content/resolved-job.ts';
import type { PlanWire } from '../model/plan/index.ts';
import type { ConductorRole } from '../model/vocabulary.ts';
import { deviceIdOf, deviceOf, hasRole } from './look-up.ts';
import type { Case } from './rule.ts';

/** What joins two terminals on the live side: a wire, the bar of a part, or a fuse. */
export interface LiveEdge {
  readonly kind: 'wire' | 'bar' | 'fuse';
  /** The wire's id; the device of a bar; `device` or `device.way` of a fuse. */
  readonly id: string;
  readonly ends: readonly [string, string];
  /** The wire itself; null for a bar or a fuse. */
  readonly wire: PlanWire | null;
}

/** The live side of a job as the rules see it, drawn from wires and parts anew and not from what the plan made of them. */
export interface LiveSide {
  readonly edges: readonly LiveEdge[];
  /** Positive terminals of batteries and alternators. */
  readonly sources: readonly string[];
}

const liveRoles: readonly ConductorRole[] = ['power', 'turn-on', 'control'];

/** Draws the live side: wires that may carry a source's current, bars, relay contacts (taken as closed), fuses. */
export function liveSide({ job, plan }: Case): LiveSide {
  const wires = plan.wires.filter(({ role }) => liveRoles.includes(role));
  return {
    edges: [
      ...wires.map((wire): LiveEdge => {
        return { kind: 'wire', id: wire.id, ends: [wire.from, wire.to], wire };
      }),
      ...job.devices.flatMap(partEdges),
    ],
    sources: job.devices.flatMap(({ id, facts }) =>
      Object.entries(facts.terminals)
        .filter(([, { role }]) => role === 'source-positive')
        .map(([terminal]) => terminalId({ device: id, terminal })),
    ),
  };
}

function partEdges({ id, facts }: Device): LiveEdge[] {
  const node = (terminal: string) => terminalId({ device: id, terminal });
  return facts.elements.flatMap((element): LiveEdge[] => {
    if (element.kind !== 'fuse' && element.kind !== 'joint') return [];
    const way = element.kind === 'fuse' && element.way !== '' ? `.${element.way}` : '';
    const kind = element.kind === 'fuse' ? 'fuse' : 'bar';
    return [{ kind, id: `${id}${way}`, ends: [node(element.from), node(element.to)], wire: null }];
  });
}

/** Terminals that are reached from the given ones over the edges that may be passed. */
export function reached(
  edges: readonly LiveEdge[],
  from: readonly string[],
  passes: (edge: LiveEdge) => boolean,
): ReadonlySet<string> {
  const seen = new Set(from);
  const usable = edges.filter(passes);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { ends } of usable) {
      const [a, b] = ends;
      if (seen.has(a) === seen.has(b)) continue;
      seen.add(a).add(b);
      grew = true;
    }
  }
  return seen;
}

export const noFuse = ({ kind }: LiveEdge): boolean => kind !== 'fuse';

/** True for a terminal that takes current for itself, so that a lead to it is no mere way to a fuse. */
export function isConsumer(job: Job, terminal: string): boolean {
  return hasRole(job, terminal, 'supply-positive', 'turn-on-in', 'relay-coil', 'relay-contact');
}

/** The posts of batteries and capacitor banks among terminals: of what nothing bounds in a short. */
export function batteriesAmong(job: Job, side: LiveSide, terminals: ReadonlySet<string>): readonly string[] {
  return side.sources.filter((source) => {
    const kind = deviceOf(job, deviceIdOf(source))?.spec?.kind;
    return terminals.has(source) && (kind === 'battery' || kind === 'capacitor-bank');
  });
}
