import { ratedPointName } from '../model/operating-points.ts';
import type { NetworkElement, OperatingPoint } from '../model/plan/index.ts';
import { type WholeDrop, wholeDrops } from '../plan/power/known-drops.ts';
import { deviceOf } from './look-up.ts';
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
  return plan.power.points.find(({ name }) => name === ratedPointName);
}

/** The operating points that music comes to: every device at its fuse at once only sizes the wiring. */
export function playedPoints({ plan }: Case): readonly OperatingPoint[] {
  return plan.power.points.filter(({ name }) => name !== 'full-rating');
}

/** The drops of the job's own devices at rated power, as far as they are known. */
export function ratedDrops(about: Case): readonly WholeDrop[] {
  const point = ratedPoint(about);
  return wholeDrops(about.plan.power.drops).filter(
    (drop) => drop.point === point?.name && deviceOf(about.job, drop.item)?.origin !== 'vehicle',
  );
}
