import type { Device, Job } from '../../model/content/resolved-job.ts';
import { driverOf } from '../audio/turn-on-chain.ts';
import { devicesById } from '../wiring/conductor-role.ts';

/** A fan that a job fits, with the space whose air it moves; null where nothing tells which. */
export interface FittedFan {
  readonly item: string;
  readonly space: string | null;
  /** By its maker, with nothing before it and behind it (m3/s). */
  readonly airflowM3S: number;
  readonly drawA: number;
}

/** The fans among the devices of a job. */
export function fittedFans(job: Pick<Job, 'devices' | 'boards'>): readonly FittedFan[] {
  return job.devices.flatMap((device): FittedFan[] => {
    const { id, origin, spec } = device;
    if (origin !== 'job' || spec?.kind !== 'fan') return [];
    return [{ item: id, space: cooledBy(job, device), airflowM3S: spec.airflow, drawA: spec.draw }];
  });
}

/** As the device says, else the space of its board, else the only one with boards. */
function cooledBy({ boards }: Pick<Job, 'boards'>, { given, board }: Device): string | null {
  if (given?.cools !== undefined) return given.cools;
  const own = boards.find(({ id }) => id === board);
  if (own) return own.spaceId;
  const [only, other] = new Set(boards.map(({ spaceId }) => spaceId));
  return other === undefined ? (only ?? null) : null;
}

/**
 * What fans draw through the turn-on outputs of a device (A), by fan: it comes out of what feeds the device. A fan behind
 * the contact of a relay is none of them.
 */
export function fansThrough(
  { devices, links }: Pick<Job, 'devices' | 'links'>,
  device: string,
): readonly (readonly [fan: string, drawA: number])[] {
  const byId = devicesById({ devices });
  return devices.flatMap(({ id, origin, spec, facts }) => {
    if (origin !== 'job' || spec?.kind !== 'fan') return [];
    const drivers = Object.keys(facts.terminals)
      .filter((terminal) => facts.terminals[terminal]?.role === 'turn-on-in')
      .flatMap((terminal) => driverOf({ links }, byId, { device: id, terminal }) ?? []);
    const isDriven = drivers.some(({ item, isRelay }) => item === device && !isRelay);
    return isDriven ? [[id, spec.draw] as const] : [];
  });
}
