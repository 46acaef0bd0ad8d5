import { bodyId, type Device, type Job, type Link, terminalId } from '../../../model/content/resolved-job.ts';
import type { SourceType } from '../../../model/kinds/kind.ts';
import type { ConductorRole } from '../../../model/vocabulary.ts';
import type { PassiveKind } from '../../../power/network/network-types.ts';
import { conductorRole, type DevicesById } from '../../wiring/conductor-role.ts';

/** One thing that current flows through on its way, between two nodes. */
export interface CircuitEdge {
  readonly id: string;
  readonly kind: PassiveKind;
  readonly from: string;
  readonly to: string;
  /** Link of a conductor; device of a fuse or joint. */
  readonly link: Link | null;
  readonly device: Device | null;
  /** Outgoing terminal of a fused way; empty for a holder. */
  readonly way: string;
  /** Resistance of a joint by its part (ohm); none where it does not say. */
  readonly ohm?: number;
  /** When a contact joins its ends; always where left out. */
  readonly closed?: 'engine-on';
}

/** A device that draws current between two nodes. */
export interface CircuitLoad {
  readonly device: Device;
  readonly from: string;
  readonly to: string;
}

/** What drives a current between two nodes. */
export interface CircuitSource {
  readonly device: Device;
  readonly type: SourceType;
  readonly positive: string;
  readonly negative: string;
}

/** The supply side of a job as a graph: nodes are terminals, the body is one node. */
export interface Circuit {
  readonly edges: readonly CircuitEdge[];
  readonly loads: readonly CircuitLoad[];
  readonly sources: readonly CircuitSource[];
  /** The source that the vehicle came with: what the others hang on. */
  readonly primary: CircuitSource | null;
  readonly roles: ReadonlyMap<string, ConductorRole>;
}

/** The most that a source gives by its own electronics (A); null for one that nothing bounds. */
export function limitA({ device: { spec } }: CircuitSource): number | null {
  return spec?.kind === 'charger' ? spec.output.current : null;
}

/** True for what holds a charge and gives it into a short without a bound: a battery or a bank of capacitors. */
export function isStore({ type }: Pick<CircuitSource, 'type'>): boolean {
  return type === 'battery' || type === 'capacitor-bank';
}

/** The id of a fuse: its holder, or the holder and the way. */
export function fuseId(device: string, way: string): string {
  return way === '' ? device : `${device}.${way}`;
}

/** Builds the graph of a job's feed and ground side from its links and the elements of its parts. */
export function buildCircuit(job: Job, devices: DevicesById): Circuit {
  const roles = new Map(job.links.map((link) => [link.id, conductorRole(devices, link)]));
  const carriesSupply = (link: Link) => ['power', 'ground'].includes(roles.get(link.id) ?? '');
  const sources = job.devices.flatMap(sourcesOf);
  return {
    edges: [
      ...job.links.filter(carriesSupply).map(conductorEdge),
      ...job.devices.flatMap(deviceEdges),
      ...leadsInPlace(job, sources),
    ],
    loads: job.devices.flatMap(loadsOf),
    sources,
    primary:
      sources.find(({ type, device }) => type === 'battery' && device.origin === 'vehicle') ??
      sources[0] ??
      null,
    roles,
  };
}

/** Posts of the vehicle's own batteries and alternators that nothing is linked to, by name: a rule tells them. */
export function unlinkedPosts({ links }: Pick<Job, 'links'>, source: CircuitSource): readonly string[] {
  const { device, type, positive, negative } = source;
  if (device.origin !== 'vehicle' || (type !== 'battery' && type !== 'alternator')) return [];
  const linked = new Set(links.flatMap(({ from, to }) => [terminalId(from), terminalId(to)]));
  return [positive, negative].filter((post) => !linked.has(post));
}

/**
 * What stands in for a lead that the vehicle's file left out: the vehicle runs, so that its strap and its charge lead are
 * there. The rule that tells it is all that is said; nothing that would follow from a battery without a strap is computed.
 */
function leadsInPlace(job: Job, sources: readonly CircuitSource[]): CircuitEdge[] {
  const body = job.devices.find(({ id }) => id === bodyId);
  const battery = sources.find(({ type, device }) => type === 'battery' && device.origin === 'vehicle');
  return sources.flatMap((source) => {
    const open = unlinkedPosts(job, source);
    return open.flatMap((post): CircuitEdge[] => {
      const isGround = post === source.negative;
      const to = isGround ? body && bodyId : source.type === 'alternator' && battery?.positive;
      if (!to) return [];
      return [
        {
          id: `${post}>${to}`,
          kind: 'joint',
          from: post,
          to,
          link: null,
          device: source.device,
          way: '',
        },
      ];
    });
  });
}

function conductorEdge(link: Link): CircuitEdge {
  return {
    id: link.id,
    kind: 'conductor',
    from: terminalId(link.from),
    to: terminalId(link.to),
    link,
    device: null,
    way: '',
  };
}

function deviceEdges(device: Device): CircuitEdge[] {
  const node = (terminal: string) => terminalId({ device: device.id, terminal });
  if (device.id === bodyId)
    return Object.keys(device.facts.terminals).map((name): CircuitEdge => {
      return {
        id: `${bodyId}.${name}`,
        kind: 'joint',
        from: node(name),
        to: bodyId,
        link: null,
        device,
        way: '',
      };
    });
  return device.facts.elements.flatMap((element): CircuitEdge[] => {
    if (element.kind !== 'fuse' && element.kind !== 'joint') return [];
    const way = element.kind === 'fuse' ? element.way : '';
    const id = element.kind === 'fuse' ? fuseId(device.id, way) : `${node(element.from)}>${element.to}`;
    const { ohm, closed } = element.kind === 'joint' ? element : {};
    return [
      {
        id,
        kind: element.kind,
        from: node(element.from),
        to: node(element.to),
        link: null,
        device,
        way,
        ...(ohm !== undefined && { ohm }),
        ...(closed && { closed }),
      },
    ];
  });
}

function loadsOf(device: Device): CircuitLoad[] {
  const node = (terminal: string) => terminalId({ device: device.id, terminal });
  return device.facts.elements.flatMap((element): CircuitLoad[] =>
    element.kind === 'load' ? [{ device, from: node(element.from), to: node(element.to) }] : [],
  );
}

function sourcesOf(device: Device): CircuitSource[] {
  const node = (terminal: string) => terminalId({ device: device.id, terminal });
  return device.facts.elements.flatMap((element): CircuitSource[] =>
    element.kind === 'source'
      ? [{ device, type: element.source, positive: node(element.to), negative: node(element.from) }]
      : [],
  );
}
