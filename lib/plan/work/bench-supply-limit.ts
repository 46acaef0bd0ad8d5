import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanFirstPower } from '../../model/plan/index.ts';
import type { DeviceLoad } from '../power/device-loads.ts';

/** What idling devices may draw where `idleA` is predicted: half as much again, and half an ampere at least (A). */
export function mostIdleA(idleA: number): number {
  return Math.max(1.5 * idleA, 0.5);
}

/**
 * The limit of the bench supply (A) for the first power of each board, by house rule: the lower one where idling
 * devices stay below it, else the upper one; past that too, one device after the other, since a limit that lets all
 * of them idle would feed a fault as well.
 */
export function firstPowers({ rules, boards, devices }: Job, loads: readonly DeviceLoad[]): PlanFirstPower[] {
  const low = rules['first-power-limit'].value;
  const high = Math.max(low, rules['first-power-limit-most'].value);
  return boards.map(({ id: board }): PlanFirstPower => {
    const own = devices.filter((device) => device.board === board).map(({ id }) => id);
    const idleA = loads.filter(({ item }) => own.includes(item)).reduce((sum, load) => sum + load.idleA, 0);
    const mostA = mostIdleA(idleA);
    return { board, idleA, limitA: mostA <= low ? low : high, oneByOne: mostA > high };
  });
}
