import type { BuildPlan, PlanItem, PlanWire } from '../../model/plan/index.ts';
import { barLeads, type FeedForest, type FeedNode, type GroundLead, isGroundBar } from './feed-tree.ts';

/** A thing of the diagram in its column, and the rows that it spans. */
export interface GridNode {
  readonly id: string;
  readonly kind:
    | 'alternator'
    | 'battery'
    | 'fuse'
    | 'distribution'
    | 'device'
    | 'ground-bar'
    | 'body'
    | 'elsewhere';
  readonly item: PlanItem;
  readonly column: number;
  readonly fromRow: number;
  readonly toRow: number;
  /** The row on which its feed comes in. */
  readonly row: number;
}

/** A conductor that runs level from one node to another. */
export interface GridEdge {
  readonly wire: PlanWire;
  readonly from: string;
  readonly fromTerminal: string;
  readonly to: string;
  readonly toTerminal: string;
  readonly row: number;
}

/** The diagram before it has a size: columns from source to ground, one row a conductor. */
export interface FeedGrid {
  readonly nodes: readonly GridNode[];
  readonly edges: readonly GridEdge[];
  /** Grounds of sources and of ground bars, which hang on their symbols. */
  readonly hanging: ReadonlyMap<string, readonly GroundLead[]>;
  /** Conductors that close a ring: told beside the diagram. */
  readonly rings: readonly PlanWire[];
  readonly columns: number;
  readonly rows: number;
}

interface Building {
  readonly nodes: GridNode[];
  readonly edges: GridEdge[];
  readonly hanging: Map<string, readonly GroundLead[]>;
  readonly leads: { readonly lead: GroundLead; readonly from: string; readonly row: number }[];
  rows: number;
}

const kinds: Readonly<Record<string, GridNode['kind']>> = {
  alternator: 'alternator',
  battery: 'battery',
  'fuse-holder': 'fuse',
  distribution: 'distribution',
};

/** Puts the feed into columns and rows: every conductor is one level line, so that none cross. */
export function feedGrid(plan: Pick<BuildPlan, 'items' | 'wires'>, forest: FeedForest): FeedGrid {
  const building: Building = { nodes: [], edges: [], hanging: new Map(), leads: [], rows: 0 };
  const hasAlternator = forest.roots.some(({ branches }) =>
    branches.some(({ to }) => to.item.kind === 'alternator'),
  );
  for (const root of forest.roots) layNode(root, hasAlternator ? 1 : 0, building);
  const last = Math.max(0, ...building.nodes.map(({ column }) => column));
  const feeds = new Set(building.edges.map(({ from }) => from));
  const ended = building.nodes.map((node) => (feeds.has(node.id) ? node : asDevice(node, last)));
  const grounds = groundNodes(plan, building, last + 1);
  const edges = [...building.edges, ...grounds.edges];
  const nodes = [...ended, ...grounds.nodes].map((node) => spanned(node, edges));
  return {
    nodes,
    edges,
    hanging: building.hanging,
    rings: forest.rings,
    columns: Math.max(0, ...nodes.map(({ column }) => column)) + 1,
    rows: building.rows,
  };
}

/** What feeds nothing further is drawn as a device, in the last column so that grounds line up. */
function asDevice(node: GridNode, column: number): GridNode {
  if (node.kind !== 'distribution' && node.kind !== 'device') return node;
  return { ...node, kind: 'device', column };
}

/** A node is as tall as the conductors at it. */
function spanned(node: GridNode, edges: readonly GridEdge[]): GridNode {
  const rows = edges.filter(({ from, to }) => from === node.id || to === node.id).map(({ row }) => row);
  if (rows.length === 0) return node;
  return { ...node, fromRow: Math.min(...rows), toRow: Math.max(...rows) };
}

/** Lays a node and all that hangs on it; returns the row of its feed. */
function layNode(node: FeedNode, column: number, building: Building): number {
  const { item, branches, grounds } = node;
  const kind = node.elsewhere ? 'elsewhere' : (kinds[item.kind] ?? 'device');
  const isSource = kind === 'battery' || kind === 'alternator';
  const fromRow = building.rows;
  const onward = branches.filter(({ to }) => to.item.kind !== 'alternator');
  const rowsOf = onward.map((branch) => {
    const row = layNode(branch.to, column + 1, building);
    building.edges.push({ ...endsOf(branch), wire: branch.wire, from: item.id, to: branch.to.item.id, row });
    return row;
  });
  if (isSource) building.hanging.set(item.id, grounds);
  else layGrounds(item.id, grounds, onward.length === 0 ? fromRow : building.rows, building);
  // A thing that ends here takes a row of its own.
  if (building.rows === fromRow) building.rows += 1;
  const [first = fromRow] = rowsOf;
  const last = rowsOf.at(-1) ?? first;
  // A source hangs below all that it feeds.
  const row = isSource ? last : (first + last) / 2;
  building.nodes.push({ id: item.id, kind, item, column, fromRow, toRow: building.rows - 1, row });
  for (const branch of branches.filter(({ to }) => to.item.kind === 'alternator')) {
    const { item: source } = branch.to;
    building.hanging.set(source.id, branch.to.grounds);
    building.nodes.push({ ...at(source, column - 1, row), kind: 'alternator' });
    building.edges.push({
      wire: branch.wire,
      from: source.id,
      fromTerminal: branch.toTerminal,
      to: item.id,
      toTerminal: branch.fromTerminal,
      row,
    });
  }
  return row;
}

function endsOf({ fromTerminal, toTerminal }: FeedNode['branches'][number]): {
  fromTerminal: string;
  toTerminal: string;
} {
  return { fromTerminal, toTerminal };
}

function at(item: PlanItem, column: number, row: number): GridNode {
  return { id: item.id, kind: 'body', item, column, fromRow: row, toRow: row, row };
}

function layGrounds(
  from: string,
  grounds: readonly GroundLead[],
  firstRow: number,
  building: Building,
): void {
  grounds.forEach((lead, index) => {
    building.leads.push({ lead, from, row: firstRow + index });
  });
  building.rows = Math.max(building.rows, firstRow + grounds.length);
}

/** Ground bars and points of the body; a bar stands once for every unbroken run of its rows. */
function groundNodes(
  plan: Pick<BuildPlan, 'items' | 'wires'>,
  building: Building,
  column: number,
): { nodes: GridNode[]; edges: GridEdge[] } {
  const nodes: GridNode[] = [];
  const edges: GridEdge[] = [];
  const sorted = building.leads.toSorted((a, b) => a.row - b.row);
  for (const { lead, from, row } of sorted) {
    const item = plan.items.find(({ id }) => id === lead.toItem);
    if (!item) continue;
    const before = nodes.at(-1);
    const joins = isGroundBar(item) && before?.item.id === item.id;
    const id = joins ? before.id : `${item.id}@${row}`;
    if (joins) nodes[nodes.length - 1] = { ...before, toRow: row, row: (before.fromRow + row) / 2 };
    else nodes.push({ ...at(item, column, row), id, kind: isGroundBar(item) ? 'ground-bar' : 'body' });
    const { wire, fromTerminal, toTerminal } = lead;
    edges.push({ wire, from, fromTerminal, to: id, toTerminal, row });
  }
  const bars = new Set(nodes.filter(({ kind }) => kind === 'ground-bar').map(({ item }) => item.id));
  for (const bar of bars) building.hanging.set(bar, barLeads(plan, bar));
  return { nodes, edges };
}
