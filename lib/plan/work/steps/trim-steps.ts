import type { ZoneKind } from '../../../model/vocabulary.ts';
import { minutesFor, ownWires, type Step, step, type Work } from '../work.ts';
import { safe } from './board-in.ts';

/**
 * Zones that rain and spray reach: a hole between one of them and the rest lets water in. In all others trim lies over the
 * way of a wire. Common practice, no source.
 */
export const openZones: ReadonlySet<ZoneKind> = new Set([
  'engine-bay',
  'near-exhaust',
  'bulkhead',
  'underbody',
]);

/** The zones in which trim lies over the way of a run or of one of its wires, as it comes to them. */
export function trimOver(work: Work, run: string): readonly ZoneKind[] {
  const { passes = [] } = work.plan.runs.find(({ id }) => id === run) ?? {};
  const legs = ownWires(work)
    .filter((wire) => wire.run === run)
    .flatMap(({ zones }) => zones);
  const zones = new Set([...passes, ...legs].map(({ zone }) => zone));
  return [...zones].filter((zone) => !openZones.has(zone));
}

/** The zones in which trim comes off, each with the runs that ask for it, in the order of these. */
function trimZones(work: Work): ReadonlyMap<ZoneKind, readonly string[]> {
  const zones = new Map<ZoneKind, readonly string[]>();
  for (const { id } of work.plan.runs)
    for (const zone of trimOver(work, id)) zones.set(zone, [...(zones.get(zone) ?? []), id]);
  return zones;
}

const offStep = (zone: ZoneKind): string => `trim-off-${zone}`;

/** What waits for the trim of some zones: nothing for those whose trim stays. */
export function trimOff(work: Work, zones: readonly (ZoneKind | null)[]): Step['waitsFor'] {
  const opened = trimZones(work);
  return [...new Set(zones)].flatMap((zone) =>
    zone !== null && opened.has(zone) ? [{ step: offStep(zone), why: 'the trim over it is off' }] : [],
  );
}

/** Trim comes off once in each zone, before the first run there is laid. Common practice, no source. */
export function trimOffSteps(work: Work): Step[] {
  return [...trimZones(work)].map(([zone, runs]) =>
    step(offStep(zone), [safe], {
      layer: 'run',
      place: 'vehicle',
      by: 'vehicle',
      text: `Take trim off, ${named(zone)}: what lies over the way of ${runs.join(', ')} (trim, liner, seat or carpet). An airbag or its wiring may lie behind: feel before you pull, open no plug of a seat or an airbag but as the vehicle's maker says`,
      tools: ['trim tools'],
      minutes: half(work),
      acts: [`trim-off:${zone}`],
      proof: 'It lies by place with its screws and clips; no airbag and no belt was touched',
    }),
  );
}

/**
 * Trim goes on again once all that can send a hand back to a wire is tested: `after` is the last of these. What is tested
 * after it is what trim can spoil. Common practice, no source.
 */
export function trimOnSteps(work: Work, after: string): Step[] {
  const zones = [...trimZones(work).keys()];
  if (zones.length === 0) return [];
  return [
    step('trim-on', [{ step: after, why: 'a fault found now is mended without taking trim off again' }], {
      layer: 'dress',
      place: 'vehicle',
      by: 'vehicle',
      text: `Put trim back: ${zones.map(named).join(', ')}. No wire under a clip or a screw, none before an airbag; a plug of a seat or an airbag that was opened goes on as the vehicle's maker says, with the battery off`,
      tools: ['trim tools'],
      minutes: half(work, zones.length),
      acts: zones.map((zone) => `trim-on:${zone}`),
      proof:
        'No screw and no clip is left over; doors, seats and belts move freely; the airbag lamp goes out',
    }),
  ];
}

/** One time stands for both ways of a zone. */
function half(work: Work, zones = 1): number {
  return minutesFor(work, 'open-run', zones / 2);
}

function named(zone: ZoneKind): string {
  return zone.replaceAll('-', ' ');
}
