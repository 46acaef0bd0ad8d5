import type { ElkNode, LayoutOptions } from 'elkjs/lib/elk-api.js';
import type { JobPage } from '../../draw/draw-job.ts';
import { strokeObstacles } from '../../draw/drawn-strokes.ts';
import { at, type PaperSegment, segmentsCross } from '../../draw/paper.ts';
import { splitTerminal } from '../../draw/power/feed-tree.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';

/** A diagram of a job: the type that its drawings bear, and the roles of its conductors. */
export interface DiagramKind {
  readonly id: string;
  readonly documentType: string;
  readonly roles: readonly ConductorRole[];
}

export const diagramKinds: readonly DiagramKind[] = [
  { id: 'power', documentType: 'Power diagram', roles: ['power', 'ground'] },
  { id: 'signal', documentType: 'Signal diagram', roles: ['signal', 'control', 'speaker', 'turn-on'] },
];

/** A conductor as it is drawn: its strokes. */
export interface DrawnWire {
  readonly id: string;
  readonly strokes: readonly PaperSegment[];
}

/** How often strokes of two conductors cross inside both; where they cross twice, it counts twice. */
export function crossingsOf(wires: readonly DrawnWire[]): number {
  return wires.reduce((sum, a, nth) => {
    const crossed = wires.slice(nth + 1).flatMap((b) => (a.id === b.id ? [] : b.strokes));
    return (
      sum +
      a.strokes.reduce(
        (own, stroke) => own + crossed.filter((other) => segmentsCross(stroke, other)).length,
        0,
      )
    );
  }, 0);
}

/** Crossings of conductors on the drawn sheets of a diagram. */
export function drawnCrossings(
  pages: readonly JobPage[],
  kind: DiagramKind,
  wires: readonly Pick<PlanWire, 'id' | 'role'>[],
): number {
  const ids = new Set(wires.filter(({ role }) => kind.roles.includes(role)).map(({ id }) => id));
  return pages
    .filter(({ page }) => page.documentType === kind.documentType)
    .reduce((sum, { drawing }) => {
      const strokes = new Map<string, Map<string, PaperSegment>>();
      for (const obstacle of strokeObstacles(drawing)) {
        if (!('segment' in obstacle) || !ids.has(obstacle.id)) continue;
        // A line with a core or with ticks is drawn twice along the same points.
        const own = strokes.get(obstacle.id) ?? new Map<string, PaperSegment>();
        strokes.set(obstacle.id, own.set(JSON.stringify(obstacle.segment), obstacle.segment));
      }
      return sum + crossingsOf([...strokes].map(([id, own]) => ({ id, strokes: [...own.values()] })));
    }, 0);
}

/** Lays a graph out by elkjs. */
export type ElkLayout = (graph: ElkNode) => Promise<ElkNode>;

/** Opens elkjs, which only a development install has; null where it is missing. */
export async function openElk(): Promise<ElkLayout | null> {
  const found = await import('elkjs/lib/elk.bundled.js').catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ERR_MODULE_NOT_FOUND') return null;
    throw error;
  });
  if (!found) return null;
  const elk = new found.default.default();
  return (graph) => elk.layout(graph);
}

/** In layers from left to right, level and upright lines: as our diagrams are, and as thoroughly as elkjs will. */
const layered: LayoutOptions = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.layered.thoroughness': '100',
  'elk.randomSeed': '1',
};

const portPitch = 20;

/**
 * The conductors of a diagram as a graph for elkjs: an item a node, a terminal a port. Each port is free along its
 * side, which our drawings do not allow themselves, for they keep the order of the panels.
 */
export function elkGraph(kind: DiagramKind, wires: readonly PlanWire[]): ElkNode {
  const own = wires.filter(({ role }) => kind.roles.includes(role));
  const ports = new Map<string, Map<string, 'EAST' | 'WEST'>>();
  const portAt = (terminal: string, side: 'EAST' | 'WEST'): void => {
    const node = nodeOf(terminal);
    ports.set(node, (ports.get(node) ?? new Map()).set(`${terminal} ${side}`, side));
  };
  for (const { from, to } of own) {
    portAt(from, 'EAST');
    portAt(to, 'WEST');
  }
  return {
    id: 'diagram',
    layoutOptions: layered,
    children: [...ports].map(([id, sides]) => ({
      id,
      width: 100,
      height: portPitch * (sides.size + 1),
      layoutOptions: { 'elk.portConstraints': 'FIXED_SIDE' },
      ports: [...sides].map(([port, side]) => ({
        id: port,
        width: 1,
        height: 1,
        layoutOptions: { 'elk.port.side': side },
      })),
    })),
    edges: own.map(({ id, from, to }) => ({ id, sources: [`${from} EAST`], targets: [`${to} WEST`] })),
  };
}

/** Each point of the body is a node of its own: our drawings draw it where it is needed, too. */
function nodeOf(terminal: string): string {
  const { item } = splitTerminal(terminal);
  return item === 'body' ? terminal : item;
}

/** Crossings of a graph that elkjs laid out. */
export function elkCrossings({ edges = [] }: ElkNode): number {
  return crossingsOf(
    edges.map(({ id, sections = [] }) => ({
      id,
      strokes: sections.flatMap(({ startPoint, bendPoints = [], endPoint }) => {
        const points = [startPoint, ...bendPoints, endPoint].map(({ x, y }) => at(x, y));
        return points.slice(1).flatMap((to, index) => {
          const from = points[index];
          return from ? [{ from, to }] : [];
        });
      }),
    })),
  );
}
