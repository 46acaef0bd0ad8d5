import { bodyId, linkEndOf } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { type ZoneKind, zoneKindSchema } from '../../model/vocabulary.ts';
import { ambientRules } from '../../model/zone-ambient.ts';
import { deviceOf, stretchSpot } from '../look-up.ts';
import { type Case, placeOf, type Spot } from '../rule.ts';
import { listed } from '../words.ts';

/**
 * Where the vehicle's file puts a wire into a zone: the stretch of its route, and the device, place, ground point or space
 * at each of its ends.
 */
function zoneSpots({ job }: Case, wire: PlanWire, zone: ZoneKind): readonly Spot[] {
  const run = job.runs.find(({ id }) => id === wire.run);
  const passes = run?.route.passes ?? [];
  const stretches = passes.flatMap((pass, at) => (pass.zone === zone && run ? [stretchSpot(run, at)] : []));
  const ends = [wire.from, wire.to].flatMap((end): readonly Spot[] => {
    const { device: id, terminal } = linkEndOf(end);
    const device = deviceOf(job, id);
    if (id === bodyId)
      return device?.groundZones[terminal] === zone ? [inVehicle('grounds', terminal, 'zone')] : [];
    if (device?.zone !== zone) return [];
    if (device.origin === 'vehicle') return [inVehicle('fitted', id, 'zone')];
    if (device.seat !== null) return [inVehicle('places', device.seat, 'zone')];
    const board = job.boards.find((one) => one.id === device.board);
    return board ? [inVehicle('spaces', board.spaceId, 'zone')] : [];
  });
  return [...stretches, ...ends];
}

function inVehicle(...keys: readonly string[]): Spot {
  return { path: pointer(keys), file: 'vehicle' };
}

/**
 * Where to mend a zone that is too hot for the insulation of a wire, and which zones would do:
 * `where the zone is wrong, write another at content/vehicles/van.yaml:20:5: cabin, cargo ...`.
 */
export function zoneRemedy(about: Case, wire: PlanWire, zone: ZoneKind, ratedC: number | null): string {
  const { job } = about;
  const spots = zoneSpots(about, wire, zone).map((spot) => {
    const { file, line, column } = placeOf(spot, job);
    return `${file}:${line}:${column}`;
  });
  if (spots.length === 0) return 'where the zone is wrong, write another in the file of the vehicle';
  const cooler = zoneKindSchema.options.filter(
    (other) => ratedC !== null && job.rules[ambientRules[other]].value < ratedC,
  );
  const told = cooler.length > 0 ? `; of these would do: ${cooler.join(', ')}` : '';
  const dash =
    zone === 'dash-top' && cooler.includes('cabin')
      ? '; cabin is right for a unit in the dash, dash-top for what lies on it in the sun alone'
      : '';
  return `where the zone ${zone} is wrong, write another at ${listed([...new Set(spots)])}${told}${dash}`;
}
