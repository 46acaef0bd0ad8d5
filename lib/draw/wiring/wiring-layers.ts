import { layingOrder } from '../../model/laying-order.ts';
import type { PlanBoard, PlanRoute, PlanWire } from '../../model/plan/index.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';

/** What is drawn on one sheet of the wiring of a board. */
export interface WiringLayer {
  readonly id: 'signal' | 'speaker' | 'turn-on' | 'power';
  /** As titles name it. */
  readonly name: string;
  readonly roles: readonly ConductorRole[];
}

/** The layers of a board, each on a drawing of its own. */
export const wiringLayers: readonly WiringLayer[] = [
  { id: 'signal', name: 'signal', roles: ['signal'] },
  { id: 'speaker', name: 'speakers', roles: ['speaker'] },
  { id: 'turn-on', name: 'turn-on and control', roles: ['turn-on', 'control'] },
  { id: 'power', name: 'power and ground', roles: ['power', 'ground'] },
];

/** True where a wire is drawn on the sheet of a layer. */
export function isOnLayer({ roles }: WiringLayer, { role }: Pick<PlanWire, 'role'>): boolean {
  return roles.includes(role);
}

/** Routes in the order in which they are laid: a later one passes over an earlier one. */
export function inLayingOrder({ routes }: Pick<PlanBoard, 'routes'>): PlanRoute[] {
  const rank = ({ layer }: PlanRoute): number => layingOrder.indexOf(layer);
  return routes.toSorted((a, b) => rank(a) - rank(b));
}
