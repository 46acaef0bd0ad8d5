import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanFirstPower, PlanPower } from '../../model/plan/index.ts';
import { fittedFans } from '../power/fans.ts';
import { turnOnByLead } from './turn-on-state.ts';

/** What idling devices may draw where `idleA` is predicted: half as much again, and half an ampere at least (A). */
export function mostIdleA(idleA: number): number {
  return Math.max(1.5 * idleA, 0.5);
}

/**
 * The limit of the bench supply (A) for the first power of each board, by house rule: the lower one where idling
 * devices stay below it, else the upper one; past that too, one device after the other, since a limit that lets all
 * of them idle would feed a fault as well. What is set onto a board in the vehicle only (`setLate`) is not there to idle.
 */
export function firstPowers(
  { rules, boards, devices, links }: Job,
  loads: PlanPower['loads'],
  setLate: ReadonlySet<string>,
): PlanFirstPower[] {
  const low = rules['first-power-limit'].value;
  const high = Math.max(low, rules['first-power-limit-most'].value);
  return boards.map(({ id: board }): PlanFirstPower => {
    const own = new Set(devices.filter((device) => device.board === board).map(({ id }) => id));
    // Fans come on with the others, from the same supply.
    const fans = fittedFans({ devices, boards }).map(({ item, drawA }) => ({ item, idleA: drawA }));
    const drawing = [...loads, ...fans].filter(({ item }) => own.has(item));
    const late = drawing.filter(({ item }) => setLate.has(item)).map(({ item }) => item);
    const idleA = drawing.reduce((sum, { item, idleA }) => sum + (setLate.has(item) ? 0 : idleA), 0);
    const byLead = devices.flatMap((device) =>
      own.has(device.id) && !setLate.has(device.id) ? (turnOnByLead({ links }, device) ?? []) : [],
    );
    const mostA = mostIdleA(idleA);
    return {
      ...{ board, idleA, limitA: mostA <= low ? low : high, oneByOne: mostA > high },
      ...(late.length > 0 && { late }),
      ...(byLead.length > 0 && { byLead }),
    };
  });
}
