import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { directRoutes } from '../draft/ways.ts';

/** The batteries of a job: that of the engine, and a second one that the job adds. */
export interface Batteries {
  readonly starter: DraftDevice | null;
  readonly second: DraftDevice | null;
}

/** The battery that starts the engine, or the only one of the vehicle; and the first that the job brings. */
export function batteriesOf(draft: Draft): Batteries {
  const all = draft.devices.filter(({ spec }) => spec.kind === 'battery');
  const fitted = all.filter(({ origin }) => origin === 'vehicle');
  const starter =
    fitted.find(({ spec }) => spec.kind === 'battery' && spec['cold-cranking'] !== undefined) ??
    fitted[0] ??
    null;
  return { starter, second: all.find(({ origin }) => origin === 'job') ?? null };
}

/**
 * The place beside a battery where the first fuse sits: its own place, the one that a tail of its own leads to, else
 * the one of its zone among those that its routes serve. Null where the vehicle tells none.
 */
export function placeBeside(draft: Draft, battery: DraftDevice): string | null {
  if (battery.seat !== null) return battery.seat;
  const { vehicle } = draft.around;
  const places = Object.entries(vehicle.places);
  const tails = places.flatMap(([seat]) => {
    const [tail] = directRoutes(draft, { served: [battery.id] }, { served: [seat] });
    return tail ? [{ seat, lengthM: tail.route.passes.reduce((sum, { length }) => sum + length, 0) }] : [];
  });
  const inZone = (seat: string) => vehicle.places[seat]?.zone === battery.zone;
  const near = tails.filter(({ seat }) => inZone(seat)).toSorted((a, b) => a.lengthM - b.lengthM);
  if (near[0]) return near[0].seat;
  const served = Object.values(vehicle.routes)
    .filter(({ ends = [], serves = [] }) => [...ends, ...serves].includes(battery.id))
    .flatMap(({ ends = [], serves = [] }) => [...ends, ...serves]);
  return served.find((name) => name in vehicle.places && inZone(name)) ?? null;
}
