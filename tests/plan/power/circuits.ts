import type { Device, Link } from '../../../lib/model/content/resolved-job.ts';
import type { ConductorRole } from '../../../lib/model/vocabulary.ts';
import type {
  Circuit,
  CircuitEdge,
  CircuitLoad,
  CircuitSource,
} from '../../../lib/plan/power/circuit/circuit.ts';

function device(id: string): Device {
  return {
    id,
    origin: 'job',
    path: `/devices/${id}`,
    title: id,
    part: null,
    spec: null,
    facts: { terminals: {}, controls: {}, footprint: null, elements: [] },
    given: null,
    board: null,
    seat: null,
    zone: 'cabin',
    side: 'middle',
    groundZones: {},
    leftOpen: {},
  };
}

function end(node: string): Link['from'] {
  const [name = '', terminal = ''] = node.split('.');
  return { device: name, terminal };
}

function conductor(id: string, from: string, to: string): CircuitEdge {
  const link: Link = {
    id,
    origin: 'job',
    path: `/links/${id}`,
    from: end(from),
    to: end(to),
    given: null,
    fitted: null,
    cable: null,
    run: null,
  };
  return { id, kind: 'conductor', from, to, link, device: null, way: '' };
}

function fuse(id: string, from: string, to: string): CircuitEdge {
  return { id, kind: 'fuse', from, to, link: null, device: device(id), way: '' };
}

/** What a circuit of a test is written as: `[id, from, to]` of each thing. */
export interface Written {
  readonly feeds: readonly (readonly [id: string, from: string, to: string])[];
  readonly grounds?: readonly (readonly [id: string, from: string, to: string])[];
  readonly fuses?: readonly (readonly [id: string, from: string, to: string])[];
  readonly loads: readonly string[];
  /** Batteries, the first one the vehicle's: `id.POS` and `id.NEG`. */
  readonly batteries: readonly string[];
}

/** The circuit of what was written; a load lies between its `B+` and its `GND`. */
export function circuitOf({ feeds, grounds = [], fuses = [], loads, batteries }: Written): Circuit {
  const sources = batteries.map((id): CircuitSource => {
    return { device: device(id), type: 'battery', positive: `${id}.POS`, negative: `${id}.NEG` };
  });
  const role = (role: ConductorRole) => (one: readonly [string, string, string]) => [one[0], role] as const;
  return {
    edges: [
      ...[...feeds, ...grounds].map(([id, from, to]) => conductor(id, from, to)),
      ...fuses.map(([id, from, to]) => fuse(id, from, to)),
    ],
    loads: loads.map((id): CircuitLoad => ({ device: device(id), from: `${id}.B+`, to: `${id}.GND` })),
    sources,
    primary: sources[0] ?? null,
    roles: new Map([...feeds.map(role('power')), ...grounds.map(role('ground'))]),
  };
}

/** An edge of a circuit by its id. */
export function edgeOf({ edges }: Circuit, id: string): CircuitEdge {
  const edge = edges.find((one) => one.id === id);
  if (!edge) throw new Error(`The circuit has no edge ${id}.`);
  return edge;
}

/** A source of a circuit by its device. */
export function sourceOf({ sources }: Circuit, id: string): CircuitSource {
  const source = sources.find((one) => one.device.id === id);
  if (!source) throw new Error(`The circuit has no source ${id}.`);
  return source;
}

/** One battery, a main fuse, a block with a fuse a way, two amplifiers, one ground point. */
export const tree = (): Circuit =>
  circuitOf({
    batteries: ['bat'],
    feeds: [
      ['tail', 'bat.POS', 'main.IN'],
      ['feed', 'main.OUT', 'block.IN'],
      ['feed-a', 'block.OUT1', 'a.B+'],
      ['feed-b', 'block.OUT2', 'b.B+'],
    ],
    fuses: [
      ['main', 'main.IN', 'main.OUT'],
      ['way-1', 'block.IN', 'block.OUT1'],
      ['way-2', 'block.IN', 'block.OUT2'],
    ],
    grounds: [
      ['ground-a', 'a.GND', 'bar.G1'],
      ['ground-b', 'b.GND', 'bar.G1'],
      ['ground', 'bar.G1', 'body'],
      ['strap', 'bat.NEG', 'body'],
    ],
    loads: ['a', 'b'],
  });

/** The tree with two feeds side by side behind its main fuse. */
export const ring = (): Circuit =>
  circuitOf({
    batteries: ['bat'],
    feeds: [
      ['tail', 'bat.POS', 'main.IN'],
      ['feed-1', 'main.OUT', 'block.IN'],
      ['feed-2', 'main.OUT', 'block.IN'],
      ['feed-a', 'block.OUT1', 'a.B+'],
    ],
    fuses: [
      ['main', 'main.IN', 'main.OUT'],
      ['way-1', 'block.IN', 'block.OUT1'],
    ],
    grounds: [
      ['ground-a', 'a.GND', 'body'],
      ['strap', 'bat.NEG', 'body'],
    ],
    loads: ['a'],
  });

/** A battery, so many feeds side by side, each behind a fuse of its own, and a block with two amplifiers. */
export const sideBySide = (count: number): Circuit => {
  const each = Array.from({ length: count }, (_, k) => k + 1);
  return circuitOf({
    batteries: ['bat'],
    feeds: [
      ...each.map((k) => [`tail-${k}`, 'bat.POS', `side-${k}.IN`] as const),
      ...each.map((k) => [`feed-${k}`, `side-${k}.OUT`, 'block.IN'] as const),
      ['feed-a', 'block.OUT1', 'a.B+'],
      ['feed-b', 'block.OUT2', 'b.B+'],
      ['bus', 'block.IN', 'bus.IN'],
    ],
    fuses: [
      ...each.map((k) => [`side-${k}`, `side-${k}.IN`, `side-${k}.OUT`] as const),
      ['way-1', 'block.IN', 'block.OUT1'],
      ['way-2', 'block.IN', 'block.OUT2'],
    ],
    grounds: [
      ['ground-a', 'a.GND', 'body'],
      ['ground-b', 'b.GND', 'body'],
      ['strap', 'bat.NEG', 'body'],
    ],
    loads: ['a', 'b'],
  });
};

/** Two batteries, each with its fuse, and two links side by side between them: a ring with a source at either end. */
export const ringOfTwoBatteries = (): Circuit =>
  circuitOf({
    batteries: ['front', 'rear'],
    feeds: [
      ['front-tail', 'front.POS', 'fuse-front.IN'],
      ['link-1', 'fuse-front.OUT', 'fuse-rear.OUT'],
      ['link-2', 'fuse-front.OUT', 'fuse-rear.OUT'],
      ['rear-tail', 'rear.POS', 'fuse-rear.IN'],
      ['feed', 'fuse-rear.OUT', 'amp.B+'],
    ],
    fuses: [
      ['fuse-front', 'fuse-front.IN', 'fuse-front.OUT'],
      ['fuse-rear', 'fuse-rear.IN', 'fuse-rear.OUT'],
    ],
    grounds: [
      ['strap', 'front.NEG', 'body'],
      ['rear-ground', 'rear.NEG', 'body'],
      ['ground', 'amp.GND', 'body'],
    ],
    loads: ['amp'],
  });

/** Two batteries with a fused link between them; the amplifier hangs on the second. */
export const twoBatteries = (): Circuit =>
  circuitOf({
    batteries: ['front', 'rear'],
    feeds: [
      ['front-tail', 'front.POS', 'fuse-front.IN'],
      ['link', 'fuse-front.OUT', 'fuse-rear.OUT'],
      ['rear-tail', 'rear.POS', 'fuse-rear.IN'],
      ['board-tail', 'rear.POS', 'board.IN'],
      ['feed', 'board.OUT', 'amp.B+'],
    ],
    fuses: [
      ['fuse-front', 'fuse-front.IN', 'fuse-front.OUT'],
      ['fuse-rear', 'fuse-rear.IN', 'fuse-rear.OUT'],
      ['board', 'board.IN', 'board.OUT'],
    ],
    grounds: [
      ['strap', 'front.NEG', 'body'],
      ['rear-ground', 'rear.NEG', 'body'],
      ['ground', 'amp.GND', 'body'],
    ],
    loads: ['amp'],
  });
