import { turnOnSum } from '../../audio/turn-on.ts';
import { type Job, linkEndOf } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { contactCurrentA, isRelay } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import type { PlanTurnOn, PlanTurnOnStage } from '../../model/plan/index.ts';
import type { PlanBook } from '../plan-book.ts';
import { supplyOf } from '../power/device-loads.ts';
import { remarkFault } from '../remark-fault.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';

/** What each turn-on output, and each relay contact in its place, drives, summed against what it can give. */
export function turnOnSums(
  job: Job,
  devices: DevicesById,
  chain: readonly PlanTurnOnStage[],
  book: PlanBook,
): PlanTurnOn[] {
  const drivers = [...new Set(chain.flatMap(({ driver }) => driver ?? []))];
  return drivers.map((source) => {
    const driven = chain.filter(({ driver }) => driver === source);
    const items = [...new Set(driven.map(({ item }) => item))];
    const loads = items.map((item) => ({ item, currentA: turnOnDrawA(devices, item) }));
    const limitA = limitOf(job, source);
    const sum = turnOnSum({ source, limitA }, loads);
    if (isFault(sum)) {
      const [subject = source] = sum.of;
      const device = devices.get(subject) ?? devices.get(linkEndOf(source).device);
      // What a device gives or draws stands in its part.
      const part = device?.part ?? null;
      if (device)
        remarkFault(
          sum,
          device,
          book,
          part === null ? undefined : { path: pointer(['parts', part]), file: 'part' },
        );
      return { source, loads, sumA: null, limitA, within: null };
    }
    const at = `power.turnOn.${source}`;
    return {
      source,
      loads,
      sumA: book.trace(`${at}.sumA`, sum.sumA),
      limitA: book.trace(`${at}.limitA`, sum.limitA),
      within: sum.within,
    };
  });
}

/** What an output gives, or what the contact of a relay carries. */
function limitOf({ devices }: Pick<Job, 'devices'>, source: string): number | null {
  const end = linkEndOf(source);
  const device = devices.find(({ id }) => id === end.device);
  if (isRelay(device?.spec)) return contactCurrentA(device.spec);
  return device?.facts.terminals[end.terminal]?.current ?? null;
}

function turnOnDrawA(devices: DevicesById, id: string): number | null {
  const spec = devices.get(id)?.spec ?? null;
  if (isRelay(spec)) return spec['coil-current'];
  return supplyOf(spec)?.['turn-on-draw'] ?? null;
}
