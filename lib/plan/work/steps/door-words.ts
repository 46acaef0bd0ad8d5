import type { PlanRun, PlanWire } from '../../../model/plan/index.ts';
import type { WithPlan } from '../work.ts';

/** True where the way of a run or one of its wires goes into a door. */
function goesIntoDoor(
  { passes = [] }: Pick<PlanRun, 'passes'>,
  wires: readonly Pick<PlanWire, 'zones'>[],
): boolean {
  return [...passes, ...wires.flatMap(({ zones }) => zones)].some(({ zone }) => zone === 'door');
}

/** How wires lie in a door; empty for a run that goes into none. Common practice, no source. */
export function layInDoorText(
  run: Pick<PlanRun, 'passes'>,
  wires: readonly Pick<PlanWire, 'zones'>[],
): string {
  return goesIntoDoor(run, wires)
    ? '; in the door tied clear of the way of the window and of what moves it, window up and down, above its drains, with a drip loop below the sleeve: water runs off there; its slack at the hinge, so that nothing pulls with the door wide open'
    : '';
}

/** What is looked at once wires lie in a door. */
export function laidInDoorProof(
  run: Pick<PlanRun, 'passes'>,
  wires: readonly Pick<PlanWire, 'zones'>[],
): string {
  return goesIntoDoor(run, wires)
    ? '; the door opens wide and shuts, the window goes up and down, and nothing is touched; the sleeve sits on both sides'
    : '';
}

/** How things are let into a door; empty for a place that is not in one. Common practice, no source. */
export function mountInDoorText({ plan }: WithPlan<'items'>, own: readonly string[]): string {
  return plan.items.some(({ id, zone }) => zone === 'door' && own.includes(id))
    ? '; in a door: window down and clear of it before anything is drilled or screwed in, a gasket round what is let in, the sheet that keeps the water out closed again round every wire, the drains below left clear'
    : '';
}
