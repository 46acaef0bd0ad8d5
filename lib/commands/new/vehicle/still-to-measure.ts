import type { Vehicle } from '../../../model/content/vehicle.ts';
import { servedBy } from '../../../model/content/vehicle-route.ts';
import type { Part } from '../../../model/kinds/index.ts';
import { partFacts } from '../../../model/kinds/index.ts';
import { terminalsOf } from '../../../model/kinds/kind.ts';
import { isToDrill, isUnmeasured } from '../../../plan/wiring/runs/way-holes.ts';

/**
 * What a tape or a meter must still tell of a vehicle, in the order of the walk, one line a thing. What is not known is
 * left out of the file: house rules, doubts and cautions hold in its place.
 */
export function stillToMeasure(vehicle: Vehicle, parts: Readonly<Record<string, Part>>): readonly string[] {
  return [
    ...meterReadings(vehicle),
    ...outputsUnread(vehicle, parts),
    ...(Object.keys(vehicle.grounds).length === 0 ? ['ground points: stud, zone and side of each'] : []),
    ...groundsUnseen(vehicle),
    ...spacesUnmeasured(vehicle),
    ...placesUnmeasured(vehicle),
    ...waysUnmeasured(vehicle),
    ...boresUnmeasured(vehicle),
    ...holesUnseen(vehicle),
  ];
}

function meterReadings(vehicle: Vehicle): string[] {
  const isDriven = Object.keys(vehicle.fitted).length > 0;
  return [
    ...(vehicle['vehicle-load'] === undefined ? ['meter: vehicle-load'] : []),
    ...(isDriven && vehicle['charging-voltage'] === undefined && vehicle['charging-range'] === undefined
      ? ['meter: charging-voltage']
      : []),
  ];
}

function outputsUnread({ fitted }: Vehicle, parts: Readonly<Record<string, Part>>): string[] {
  return Object.entries(fitted).flatMap(([id, device]) => {
    const part = parts[device.part];
    if (part?.kind !== 'source-unit') return [];
    const names = terminalsOf(partFacts(part).terminals, 'signal-out', 'speaker-out-positive');
    const known = (name: string) => device.outputs[name] ?? device.outputs[name.replace(/\+$/, '')];
    const read = names.filter(
      (name) => (known(name)?.['clean-voltage'] ?? known(name)?.powers) !== undefined,
    );
    return read.length > 0 ? [] : [`meter: clean voltage and band of the outputs of ${id}`];
  });
}

function spacesUnmeasured({ spaces }: Vehicle): string[] {
  if (Object.keys(spaces).length === 0) return ['tape: width, height and depth of a space for a board'];
  return Object.entries(spaces).flatMap(([id, space]) => [
    ...(space.air === undefined ? [`tape: the air round ${id}`] : []),
    ...(Object.keys(space.bounds).length === 0 ? [`eye: what bounds ${id} on each side`] : []),
    ...(Object.keys(space['sound-points']).length < leastPoints
      ? [`tape: points that hold a board in ${id}`]
      : []),
    ...pointsUnread(id, space['sound-points']),
  ]);
}

/** Ground points that are still to be made, and behind which nobody looked. */
function groundsUnseen({ grounds }: Vehicle): string[] {
  const unseen = Object.entries(grounds).flatMap(([point, { there, behind }]) =>
    !there && behind === 'unknown' ? [point] : [],
  );
  return unseen.length === 0 ? [] : [`eye: what lies behind the ground point ${unseen.join(', ')}`];
}

/** Points of a space that lack the same are told together. */
function pointsUnread(id: string, points: Vehicle['spaces'][string]['sound-points']): string[] {
  const named = Object.entries(points);
  const unseen = named.flatMap(([point, { behind }]) => (behind === 'unknown' ? [point] : []));
  const undeep = named.flatMap(([point, { 'free-depth': depth }]) => (depth === undefined ? [point] : []));
  return [
    ...(unseen.length === 0 ? [] : [`eye: what lies behind ${unseen.join(', ')} of ${id}`]),
    ...(undeep.length === 0 ? [] : [`tape: free depth behind ${undeep.join(', ')} of ${id}`]),
  ];
}

/** A board lies on three points. */
const leastPoints = 3;

/**
 * Places that lack the same are told together. In the engine bay nothing is let in, and what plays to no row of seats may
 * be the place of a filter or a fuse: how far it lies from the listener is asked where a job has a speaker there.
 */
function placesUnmeasured({ places }: Vehicle): string[] {
  const lacking = new Map<string, string[]>();
  for (const [id, place] of Object.entries(places)) {
    const isInside = place.zone !== 'engine-bay';
    const isHeard = isInside && place.row !== undefined;
    const lacks = [
      ...(isInside && place.depth === undefined ? ['free depth'] : []),
      ...(isHeard && place.distance === undefined ? ['distance from the head of the listener'] : []),
    ].join(' and ');
    if (lacks !== '') lacking.set(lacks, [...(lacking.get(lacks) ?? []), id]);
  }
  return [...lacking].map(([lacks, ids]) => `tape: ${lacks} of ${ids.join(', ')}`);
}

/** The vehicle's own grommets on the way of wires, whose bore nobody measured. */
function boresUnmeasured({ routes }: Vehicle): string[] {
  return Object.entries(routes).flatMap(([route, { passes }]) =>
    passes.flatMap((pass, at) =>
      isUnmeasured(pass)
        ? [
            `tape: bore of the vehicle's own grommet at the ${pass.zone} of ${route}: write it as through-hole: in stretch ${at + 1}`,
          ]
        : [],
    ),
  );
}

/** Holes on the way of wires that are still to be drilled, and behind which nobody looked. */
function holesUnseen({ routes }: Vehicle): string[] {
  const unseen = Object.entries(routes).flatMap(([route, { passes }]) =>
    passes.flatMap((pass) =>
      isToDrill(pass) && pass.behind === 'unknown' ? [`${pass.zone} of ${route}`] : [],
    ),
  );
  return unseen.length === 0
    ? []
    : [`eye: what lies behind the hole that is to be drilled at the ${unseen.join(', ')}`];
}

/** Places, batteries, source units and ground points that no way leads to. */
function waysUnmeasured({ routes, places, fitted, grounds }: Vehicle): string[] {
  const served = new Set(Object.values(routes).flatMap(servedBy));
  const named = [...Object.keys(fitted).filter((id) => id !== 'alternator'), ...Object.keys(places)];
  const unserved = named.filter((id) => !served.has(id));
  const ground = Object.keys(grounds).some((id) => served.has(`body.${id}`));
  return [
    ...(unserved.length === 0 ? [] : [`tape: a way to ${unserved.join(', ')}`]),
    ...(ground || Object.keys(grounds).length === 0
      ? []
      : ['tape: the way from a board to its ground point']),
  ];
}
