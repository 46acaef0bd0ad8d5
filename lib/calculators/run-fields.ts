import { countFromOne, quantity, wireSize } from '../model/fields.ts';
import type { ConductorMaterial, ZoneKind } from '../model/vocabulary.ts';
import { conductorMaterialSchema, zoneKindSchema } from '../model/vocabulary.ts';
import { ambientRules, isEngineSpace } from '../model/zone-ambient.ts';
import type { RunZone } from '../power/conductor/ampacity.ts';
import type { Bench } from './bench.ts';
import { type Asked, choice, optional, required, yesNo } from './field.ts';

const words = <V extends string>(values: readonly V[]) => values.map((value) => ({ value }));

/** Where a conductor lies: what its ampacity depends on beside its make. */
export const runFields = {
  zone: choice(words(zoneKindSchema.options), {
    label: 'Hottest zone on its way',
    hint: 'The ambient of each zone is a house rule.',
    initial: 'cargo',
  }),
  covered: yesNo({ label: 'Under loom or carpet', initial: 'no' }),
  bundle: required(countFromOne, {
    label: 'Loaded conductors in its bundle',
    hint: 'This one included.',
    initial: '1',
  }),
};

/** What a conductor is made of, where no reel tells it; `size` says what its size is asked for. */
export const makeFields = (size: Asked) => ({
  size: optional(wireSize, size),
  material: choice(words(conductorMaterialSchema.options), {
    label: 'Its material',
    initial: 'copper',
  }),
  insulation: optional(quantity('temperature'), {
    label: 'Mark on its insulation',
    hint: 'Left empty: unmarked, which counts by the house rule.',
    initial: '',
  }),
});

/** The values of `runFields`. */
export interface RunEntries {
  readonly zone: ZoneKind;
  readonly covered: boolean;
  readonly bundle: number;
}

/** The values of `makeFields`, without the size. */
export interface MakeEntries {
  readonly material: ConductorMaterial;
  readonly insulation: number | null;
}

/** The zone of a run as the computations take it. */
export function zoneOf({ zone, covered, bundle }: RunEntries, { rules }: Bench, lengthM?: number): RunZone {
  return {
    zone,
    ambientC: rules[ambientRules[zone]].value,
    engineSpace: isEngineSpace(zone),
    covered: covered || zone === 'under-carpet',
    bundleCount: bundle,
    ...(lengthM !== undefined && { lengthM }),
  };
}

/** An example of a length in the shop's units. */
export function lengthExample(inch: string, millimetre: string) {
  return ({ shop }: Bench): string => (shop.units === 'inch' ? inch : millimetre);
}
