import type { NetworkElement, OperatingPoint } from '../model/plan/index.ts';
import { terminalId } from '../model/resolved-job.ts';
import type { Case } from './rule.ts';

/** Voltage of a node; null where it is not known. */
export function voltageAt(point: OperatingPoint, node: string): number | null {
  return point.nodes.find(({ id }) => id === node)?.voltageV ?? null;
}

/** Voltage over an element, from its drop or its nodes; null where neither is known. */
export function voltageOver(point: OperatingPoint, { dropV, from, to }: NetworkElement): number | null {
  if (dropV !== undefined) return dropV;
  const [high, low] = [voltageAt(point, from), voltageAt(point, to)];
  return high === null || low === null ? null : high - low;
}

/** The devices that draw current at an operating point. */
export function loadsOf(point: OperatingPoint): readonly NetworkElement[] {
  return point.elements.filter(({ kind }) => kind === 'load');
}

/** The operating point at rated power, where drops are judged. */
export function ratedPoint({ plan }: Case): OperatingPoint | undefined {
  const { points } = plan.power;
  return (
    points.find(({ name }) => name === 'rated' || name === 'rated-power') ??
    points.find(({ name, title }) => /rated power/i.test(`${name} ${title}`))
  );
}

/**
 * Voltage where the supply hands over: over the posts of a battery, or where no post is among the nodes, over the
 * widest pair of nodes that a conductor, fuse or joint touches.
 */
export function supplyV({ job }: Case, point: OperatingPoint): number | null {
  const posts = job.devices.flatMap(({ id, spec, facts }) => {
    if (spec?.kind !== 'battery') return [];
    const at = (role: string) =>
      Object.keys(facts.terminals)
        .filter((terminal) => facts.terminals[terminal]?.role === role)
        .map((terminal) => voltageAt(point, terminalId({ device: id, terminal })))[0];
    const [high, low] = [at('source-positive'), at('source-negative')];
    return high === undefined || high === null ? [] : [high - (low ?? 0)];
  });
  if (posts.length > 0) return Math.max(...posts);
  const touched = point.elements
    .filter(({ kind }) => kind === 'conductor' || kind === 'fuse' || kind === 'joint')
    .flatMap(({ from, to }) => [voltageAt(point, from), voltageAt(point, to)])
    .filter((voltageV) => voltageV !== null);
  return touched.length === 0 ? null : Math.max(...touched) - Math.min(...touched);
}
