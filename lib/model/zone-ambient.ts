import type { ZoneKind } from './vocabulary.ts';

/** Zones that are as warm as each other, by the ends of the names of their house rules. */
export const ambientGroups = ['engine-bay', 'near-exhaust', 'cabin', 'roof', 'dash-top'] as const;
export type AmbientGroup = (typeof ambientGroups)[number];

/** True for the name of such zones. */
export function isAmbientGroup(name: string): name is AmbientGroup {
  return ambientGroups.some((group) => group === name);
}

/** House rule of each zone's ambient. The engine side counts for the bulkhead, and for the underbody beside it. */
export const ambientRules: Readonly<Record<ZoneKind, `ambient-${AmbientGroup}`>> = {
  'engine-bay': 'ambient-engine-bay',
  bulkhead: 'ambient-engine-bay',
  underbody: 'ambient-engine-bay',
  'near-exhaust': 'ambient-near-exhaust',
  roof: 'ambient-roof',
  sill: 'ambient-cabin',
  'under-carpet': 'ambient-cabin',
  cabin: 'ambient-cabin',
  // The sun stands on the outer sheet of a door.
  door: 'ambient-roof',
  // What is seen is what the sun reaches.
  'in-sight': 'ambient-roof',
  'dash-top': 'ambient-dash-top',
  cargo: 'ambient-cabin',
};

const engineSpaces: readonly ZoneKind[] = ['engine-bay', 'bulkhead', 'underbody'];

/** True for a zone in which the published figures for engine spaces hold. */
export function isEngineSpace(zone: ZoneKind): boolean {
  return engineSpaces.includes(zone);
}
