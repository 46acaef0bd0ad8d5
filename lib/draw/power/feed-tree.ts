import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { BuildPlan, PlanItem, PlanWire } from '../../model/plan/index.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';

/** One conductor from a node to the next one away from the source. */
export interface FeedBranch {
  readonly wire: PlanWire;
  /** Terminals without their items. */
  readonly fromTerminal: string;
  readonly toTerminal: string;
  readonly to: FeedNode;
}

/** A conductor of the ground side that leaves a node. */
export interface GroundLead {
  readonly wire: PlanWire;
  readonly fromTerminal: string;
  readonly toItem: string;
  readonly toTerminal: string;
}

/** An item of the feed with what hangs on it. */
export interface FeedNode {
  readonly item: PlanItem;
  readonly branches: readonly FeedBranch[];
  readonly grounds: readonly GroundLead[];
  /** Drawn on another sheet; here stands only where the conductor comes from or goes to. */
  readonly elsewhere?: 'from' | 'to';
}

/** The feed of a job as trees from its sources, and the conductors that close a ring. */
export interface FeedForest {
  readonly roots: readonly FeedNode[];
  readonly rings: readonly PlanWire[];
}

/** Item and terminal of a terminal's id such as `amp-front.B+`. */
export function splitTerminal(id: string): { readonly item: string; readonly terminal: string } {
  const { device: item, terminal } = linkEndOf(id);
  return { item, terminal };
}

export function isSource({ kind }: PlanItem): boolean {
  return kind === 'battery' || kind === 'alternator' || kind === 'capacitor-bank';
}

/** True for a block that gathers grounds: a distribution whose terminals are ground ports. */
export function isGroundBar(item: PlanItem): boolean {
  return item.kind === 'distribution' && item.terminals.some(({ role }) => role === 'ground-bar');
}

/**
 * Reads the feed out of the conductors of a role: breadth first from the vehicle's battery, then from every
 * source that it does not reach; a conductor between two items that are both reached closes a ring.
 */
export function feedForest(
  plan: Pick<BuildPlan, 'items' | 'wires'>,
  isRoot: (item: PlanItem) => boolean = isSource,
  carries: (wire: PlanWire) => boolean = ({ role }) => role === 'power',
  showsGround: (role: TerminalRole) => boolean = () => true,
): FeedForest {
  const items = new Map(plan.items.map((item) => [item.id, item]));
  const wires = plan.wires.filter(carries);
  const grounds = plan.wires.filter(({ role }) => role === 'ground');
  const reached = new Map<string, { wire: PlanWire; to: string }[]>();
  const used = new Set<string>();
  const roots: string[] = [];
  for (const root of plan.items.filter(isRoot).toSorted(byRank)) {
    if (reached.has(root.id) || !touches(wires, root.id)) continue;
    roots.push(root.id);
    spread(root.id, wires, reached, used);
  }
  const shown =
    (item: PlanItem) =>
    ({ fromTerminal }: GroundLead): boolean => {
      const role = item.terminals.find(({ name }) => name === fromTerminal)?.role;
      return role === undefined || showsGround(role);
    };
  const node = (id: string): FeedNode | null => {
    const item = items.get(id);
    if (!item) return null;
    const branches = (reached.get(id) ?? []).flatMap(({ wire, to }) => branchOf(id, wire, node(to)));
    return {
      item,
      branches: inPanelOrder(item, branches),
      grounds: groundsOf(id, grounds, items).filter(shown(item)),
    };
  };
  return {
    roots: roots.flatMap((id) => node(id) ?? []),
    rings: wires.filter(({ id }) => !used.has(id)),
  };
}

/** The vehicle's battery first, then other batteries, then alternators and the rest. */
function byRank(a: PlanItem, b: PlanItem): number {
  const rank = ({ kind, origin }: PlanItem): number =>
    kind === 'battery' ? (origin === 'vehicle' ? 0 : 1) : 2;
  return rank(a) - rank(b);
}

function touches(wires: readonly PlanWire[], item: string): boolean {
  return wires.some(({ from, to }) => splitTerminal(from).item === item || splitTerminal(to).item === item);
}

/** The item at the other end of a wire; null where it does not touch the item. */
function otherItem({ from, to }: PlanWire, item: string): string | null {
  const [a, b] = [splitTerminal(from).item, splitTerminal(to).item];
  return a === item ? b : b === item ? a : null;
}

function spread(
  root: string,
  wires: readonly PlanWire[],
  reached: Map<string, { wire: PlanWire; to: string }[]>,
  used: Set<string>,
): void {
  reached.set(root, []);
  const open = [root];
  for (let id = open.shift(); id !== undefined; id = open.shift())
    for (const wire of wires) {
      const to = otherItem(wire, id);
      if (to === null || used.has(wire.id) || reached.has(to)) continue;
      used.add(wire.id);
      reached.get(id)?.push({ wire, to });
      reached.set(to, []);
      open.push(to);
    }
}

function branchOf(id: string, wire: PlanWire, to: FeedNode | null): FeedBranch[] {
  if (!to) return [];
  const ends = [splitTerminal(wire.from), splitTerminal(wire.to)];
  const near = ends.find(({ item }) => item === id)?.terminal ?? '';
  const far = ends.find(({ item }) => item !== id)?.terminal ?? '';
  return [{ wire, fromTerminal: near, toTerminal: far, to }];
}

/** In the order in which the part presents its terminals, so that lines do not cross. */
function inPanelOrder(item: PlanItem, branches: readonly FeedBranch[]): FeedBranch[] {
  const place = ({ fromTerminal }: FeedBranch): number =>
    item.terminals.findIndex(({ name }) => name === fromTerminal);
  return branches.toSorted((a, b) => place(a) - place(b));
}

/** Ground leads that leave an item; between a load and a bar they leave the load. */
function groundsOf(
  id: string,
  wires: readonly PlanWire[],
  items: ReadonlyMap<string, PlanItem>,
): GroundLead[] {
  return wires.flatMap((wire) => {
    const other = otherItem(wire, id);
    const target = other === null ? undefined : items.get(other);
    if (!target || !(target.kind === 'body' || isGroundBar(target))) return [];
    const ends = [splitTerminal(wire.from), splitTerminal(wire.to)];
    const near = ends.find(({ item }) => item === id);
    const far = ends.find(({ item }) => item !== id);
    return near && far
      ? [{ wire, fromTerminal: near.terminal, toItem: far.item, toTerminal: far.terminal }]
      : [];
  });
}

/** The ground leads of a bar, to the body or to another bar. */
export function barLeads(plan: Pick<BuildPlan, 'items' | 'wires'>, bar: string): GroundLead[] {
  const items = new Map(plan.items.map((item) => [item.id, item]));
  return groundsOf(
    bar,
    plan.wires.filter(({ role }) => role === 'ground'),
    items,
  );
}
