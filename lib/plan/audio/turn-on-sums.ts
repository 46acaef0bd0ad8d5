import { turnOnDrawRemedy, turnOnSum } from '../../audio/turn-on.ts';
import { type Device, type Job, linkEndOf } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { turnOnDrawOf } from '../../model/kinds/fields/turn-on-draw.ts';
import { contactCurrentA, isRelay } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import type { PlanTurnOn, PlanTurnOnStage } from '../../model/plan/index.ts';
import { ampsDrawn } from '../../model/printed/told.ts';
import type { PlanBook } from '../plan-book.ts';
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
    const draws = items.map((item) => {
      return { item, draw: turnOnDrawOf(devices.get(item)?.spec ?? null, job.rules) };
    });
    const assumed = draws.flatMap(({ item, draw }) => (draw?.isAssumed ? [item] : []));
    for (const item of assumed) remarkAssumed(devices.get(item), job, book);
    const loads = draws.map(({ item, draw }) => ({ item, currentA: draw?.currentA ?? null }));
    const limitA = limitOf(job, source);
    const sum = turnOnSum(
      { source, limitA },
      loads.map((load) => ({ ...load, isAssumed: assumed.includes(load.item) })),
    );
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

/** The house rules stand in for a maker who is silent: it is told once, where the part is written. */
function remarkAssumed(device: Device | undefined, { rules }: Pick<Job, 'rules'>, book: PlanBook): void {
  if (!device) return;
  const { value: limit } = rules['turn-on-draw'];
  const { id, part } = device;
  book.remark(
    {
      rule: 'turn-on-draw-assumed',
      level: 'note',
      of: [id],
      message: `the maker of ${id} tells no turn-on draw: ${ampsDrawn(limit)} is reckoned, by the house rule turn-on-draw`,
      remedy: turnOnDrawRemedy,
    },
    part === null
      ? { path: device.path, file: device.origin }
      : { path: pointer(['parts', part]), file: 'part' },
  );
}
