import type { BuildPlan, PlanChannel, PlanFilter, PlanItem, PlanWire } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { printedNumber, printedTone } from '../../model/printed/index.ts';
import { splitTerminal } from '../power/feed-tree.ts';

/** One conductor, from the side of the source to the side of the speaker. */
export interface SignalConductor {
  readonly wire: PlanWire;
  readonly fromTerminal: string;
  readonly toTerminal: string;
}

/** What runs together from one unit to another: one conductor, or the two of a pair. */
export interface SignalEdge {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly conductors: readonly SignalConductor[];
  /** The amplifier channel that it leaves; null before the amplifiers. */
  readonly channel: PlanChannel | null;
}

/** A thing of the signal diagram. */
export interface SignalUnit {
  readonly item: PlanItem;
  readonly column: number;
}

/** The way of the signal from sources at the left to speakers at the right. */
export interface SignalModel {
  readonly units: readonly SignalUnit[];
  readonly edges: readonly SignalEdge[];
  readonly columns: number;
  /** The column of the amplifiers, at which the diagram may be cut. */
  readonly amplifiers: number;
  /** Conductors that join terminals of speakers, by speaker. */
  readonly joins: ReadonlyMap<string, readonly SignalConductor[]>;
}

const ranks: Readonly<Record<string, number>> = { processor: 1, amplifier: 2, speaker: 3 };

function rankOf({ kind }: PlanItem): number {
  return ranks[kind] ?? 0;
}

/** Reads the way of the signal out of the conductors that carry signal, control or a speaker's power. */
export function signalModel(plan: Pick<BuildPlan, 'items' | 'wires' | 'audio'>): SignalModel {
  const items = new Map(plan.items.map((item) => [item.id, item]));
  const carried = plan.wires.filter(({ role }) => ['signal', 'control', 'speaker'].includes(role));
  const joins = new Map<string, SignalConductor[]>();
  const groups = new Map<string, SignalEdge>();
  for (const wire of carried) {
    const ends = [splitTerminal(wire.from), splitTerminal(wire.to)] as const;
    const [a, b] = ends.map(({ item }) => items.get(item));
    if (!a || !b) continue;
    const turned = isTurned(a, b, ends[0].terminal);
    const [near, far] = turned ? [ends[1], ends[0]] : ends;
    const conductor = { wire, fromTerminal: near.terminal, toTerminal: far.terminal };
    if (rankOf(a) === 3 && rankOf(b) === 3) {
      for (const id of new Set([a.id, b.id])) joins.set(id, [...(joins.get(id) ?? []), conductor]);
      continue;
    }
    const channel = channelOf(plan.audio.channels, near);
    const id = `${near.item}>${far.item}:${channel?.id ?? wire.link}`;
    const known = groups.get(id);
    const base = { id, from: near.item, to: far.item, channel };
    groups.set(id, { ...base, conductors: [...(known?.conductors ?? []), conductor] });
  }
  return arranged([...groups.values()], items, joins);
}

/** True where a wire is written against the way of its signal. */
function isTurned(a: PlanItem, b: PlanItem, terminal: string): boolean {
  if (rankOf(a) !== rankOf(b)) return rankOf(a) > rankOf(b);
  const role = a.terminals.find(({ name }) => name === terminal)?.role;
  return role === 'signal-in' || role === 'speaker-in-positive' || role === 'speaker-in-negative';
}

function channelOf(
  channels: readonly PlanChannel[],
  { item, terminal }: { item: string; terminal: string },
): PlanChannel | null {
  const id = `${item}.${terminal}`;
  return channels.find(({ positive, negative }) => positive === id || negative === id) ?? null;
}

/** Gives every unit its column: processors by how many stand before them, then amplifiers, then speakers. */
function arranged(
  edges: readonly SignalEdge[],
  items: ReadonlyMap<string, PlanItem>,
  joins: SignalModel['joins'],
): SignalModel {
  const used = [...items.values()].filter(({ id }) => edges.some(({ from, to }) => from === id || to === id));
  const depth = new Map<string, number>();
  const processors = used.filter(({ kind }) => kind === 'processor');
  // As many rounds as there are processors: a ring of them can't raise a depth for ever.
  for (const _ of processors)
    for (const { id } of processors) {
      const before = edges.filter(({ to }) => to === id).map(({ from }) => depth.get(from) ?? 0);
      depth.set(id, Math.min(processors.length, Math.max(0, ...before) + 1));
    }
  const amplifiers = Math.max(0, ...depth.values()) + 1;
  const columnOf = (item: PlanItem): number => {
    const rank = rankOf(item);
    return rank === 0 ? 0 : rank === 1 ? (depth.get(item.id) ?? 1) : rank === 2 ? amplifiers : amplifiers + 1;
  };
  const units = used.map((item) => ({ item, column: columnOf(item) }));
  const onward = edges.filter(({ from, to }) => columnAt(units, from) < columnAt(units, to));
  return { units, edges: onward, columns: amplifiers + 2, amplifiers, joins };
}

function columnAt(units: readonly SignalUnit[], id: string): number {
  return units.find(({ item }) => item.id === id)?.column ?? 0;
}

/** Filters that stand at an output, named by its terminal or by the pair. */
export function filtersAt(
  channels: readonly PlanChannel[],
  item: string,
  { conductors: [first] }: Pick<SignalEdge, 'conductors'>,
): PlanFilter[] {
  const terminal = first?.fromTerminal ?? '';
  const names = [`${item}.${terminal}`, `${item}.${stemName(terminal)}`];
  const found = channels.flatMap(({ filters }) => filters).filter(({ where }) => names.includes(where));
  const key = ({ pass, cornerHz, order, type }: PlanFilter): string => `${pass} ${cornerHz} ${order} ${type}`;
  return found.filter((filter, index) => found.findIndex((other) => key(other) === key(filter)) === index);
}

const typeLetters = { butterworth: 'BW', 'linkwitz-riley': 'LR', bessel: 'BE' } as const satisfies Record<
  PlanFilter['type'],
  string
>;

/** `high-pass 80 Hz, LR 24 dB/oct`. */
export function filterText({ pass, type, order, cornerHz }: PlanFilter): string {
  return `${pass} ${printedTone(cornerHz)}, ${typeLetters[type]} ${printedNumber('slope', order * 6)} dB/oct`;
}
