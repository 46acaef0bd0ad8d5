import { z } from 'zod';
import { builders } from './audience.ts';
import { count, quantity } from './fields.ts';
import type { DimensionName } from './quantity.ts';
import type { Mark } from './trace.ts';

interface RuleDefinition {
  /** What the rule sets, as the worksheet prints it. */
  readonly says: string;
  /** Dimension of its value, or a plain count. */
  readonly dimension: DimensionName | 'count';
  /** Default in SI. */
  readonly value: number;
  readonly citation: string;
  readonly mark?: Mark;
}

const cp = { citation: 'common practice, no source', mark: 'cp' } as const;
const inch = 0.0254;

/**
 * Every house rule with its default, its source and its mark. A shop sets its own value in `shop.yaml`
 * under `rules:` by the same key.
 */
export const houseRuleDefinitions = {
  'voltage-rested': { says: 'Battery at rest', dimension: 'voltage', value: 12.6, ...cp },
  'voltage-engine-off': { says: 'Battery under load, engine off', dimension: 'voltage', value: 12.2, ...cp },
  'voltage-sizing': {
    says: 'Supply at hot idle; sizes are chosen at it',
    dimension: 'voltage',
    value: 13.8,
    ...cp,
  },
  'voltage-rated': {
    says: 'Supply at which rated power is stated',
    dimension: 'voltage',
    value: 14.4,
    ...cp,
  },
  'voltage-variable': {
    says: 'Supply for sizing where charging voltage varies',
    dimension: 'voltage',
    value: 12.5,
    ...cp,
  },
  'alternator-idle-share': {
    says: 'Alternator current limit at hot idle, of its rating',
    dimension: 'ratio',
    value: 0.35,
    ...cp,
  },
  'alternator-cruise-share': {
    says: 'Alternator current limit at hot cruise, of its rating',
    dimension: 'ratio',
    value: 0.8,
    ...cp,
  },
  'vehicle-load': {
    says: 'Load of the vehicle itself where not measured',
    dimension: 'current',
    value: 50,
    ...cp,
  },
  'battery-acceptance': {
    says: 'Charge that a battery takes up when nearly full',
    dimension: 'current',
    value: 15,
    ...cp,
  },
  'cut-out': {
    says: 'Low-voltage cut-out of a device where its maker is silent',
    dimension: 'voltage',
    value: 10.5,
    ...cp,
  },
  'efficiency-class-ab': {
    says: 'Efficiency of class AB at full power',
    dimension: 'ratio',
    value: 0.55,
    ...cp,
  },
  'efficiency-class-ab-eighth': {
    says: 'Efficiency of class AB at one eighth power',
    dimension: 'ratio',
    value: 0.25,
    ...cp,
  },
  'efficiency-class-d': {
    says: 'Efficiency of full-range class D at full power',
    dimension: 'ratio',
    value: 0.75,
    ...cp,
  },
  'efficiency-class-d-eighth': {
    says: 'Efficiency of full-range class D at one eighth power',
    dimension: 'ratio',
    value: 0.55,
    ...cp,
  },
  'efficiency-bass-class-d': {
    says: 'Efficiency of bass class D at full power',
    dimension: 'ratio',
    value: 0.8,
    ...cp,
  },
  'efficiency-bass-class-d-eighth': {
    says: 'Efficiency of bass class D at one eighth power',
    dimension: 'ratio',
    value: 0.6,
    ...cp,
  },
  'music-duty': { says: 'Average of music, of rated power', dimension: 'ratio', value: 0.125, ...cp },
  'music-duty-bass': {
    says: 'Average of heavy bass, of rated power',
    dimension: 'ratio',
    value: 1 / 3,
    ...cp,
  },
  'lug-resistance': { says: 'Resistance of a crimped lug', dimension: 'resistance', value: 0.0002, ...cp },
  'joint-resistance': { says: 'Resistance of a bolted joint', dimension: 'resistance', value: 0.0002, ...cp },
  'body-resistance': {
    says: 'Resistance of the body as ground path',
    dimension: 'resistance',
    value: 0.001,
    ...cp,
  },
  'battery-resistance-flooded': {
    says: 'Internal resistance of a flooded battery',
    dimension: 'resistance',
    value: 0.008,
    ...cp,
  },
  'battery-resistance-agm': {
    says: 'Internal resistance of an absorbed glass mat battery',
    dimension: 'resistance',
    value: 0.004,
    ...cp,
  },
  'battery-resistance-lithium': {
    says: 'Internal resistance of a lithium battery',
    dimension: 'resistance',
    value: 0.004,
    ...cp,
  },
  'bolt-in-fuse-volt': {
    says: 'Drop of a bolt-in fuse at its rating',
    dimension: 'voltage',
    value: 0.1,
    ...cp,
  },
  'blade-fuse-volt': { says: 'Drop of a blade fuse at its rating', dimension: 'voltage', value: 0.12, ...cp },
  'conductor-temperature': {
    says: 'Conductor temperature assumed for resistance',
    dimension: 'temperature',
    value: 60,
    ...cp,
  },
  stranding: {
    says: 'Added resistance of stranded conductor over solid',
    dimension: 'ratio',
    value: 0.02,
    ...cp,
  },
  'insulation-unmarked': {
    says: 'Insulation temperature of unmarked cable',
    dimension: 'temperature',
    value: 60,
    ...cp,
  },
  'insulation-fitted': {
    says: "Insulation temperature of the vehicle maker's own conductors where not stated",
    dimension: 'temperature',
    value: 105,
    ...cp,
  },
  'drop-limit': {
    says: 'Greatest drop, feed plus return, at rated power',
    dimension: 'ratio',
    value: 0.03,
    ...cp,
  },
  'ground-drop-good': { says: 'Ground-side drop that is good', dimension: 'voltage', value: 0.1, ...cp },
  'ground-drop-limit': { says: 'Greatest ground-side drop', dimension: 'voltage', value: 0.2, ...cp },
  'fuse-margin': { says: 'Fuse over rated current', dimension: 'ratio', value: 1.25, ...cp },
  'fuse-continuous': { says: 'Continuous load, of the fuse', dimension: 'ratio', value: 0.8, ...cp },
  'fuse-distance-good': {
    says: 'Fuse from its source, along the conductor: good',
    dimension: 'length',
    value: 7 * inch,
    citation: '33 CFR 183.455 (a regulation for boats, here a yardstick)',
  },
  'fuse-distance-loomed': {
    says: 'Fuse from its source if loomed',
    dimension: 'length',
    value: 18 * inch,
    ...cp,
  },
  'fuse-distance-sheathed': {
    says: 'Fuse from its source if sheathed all the way',
    dimension: 'length',
    value: 40 * inch,
    citation: '33 CFR 183.455 (a regulation for boats, here a yardstick)',
  },
  'ambient-engine-bay': { says: 'Ambient in the engine bay', dimension: 'temperature', value: 85, ...cp },
  'ambient-near-exhaust': { says: 'Ambient near the exhaust', dimension: 'temperature', value: 125, ...cp },
  'ambient-cabin': {
    says: 'Ambient in cabin, cargo area and under carpet',
    dimension: 'temperature',
    value: 50,
    ...cp,
  },
  'ambient-roof': { says: 'Ambient at roof and sunlit trim', dimension: 'temperature', value: 70, ...cp },
  'loom-factor': { says: 'Ampacity under loom or carpet', dimension: 'ratio', value: 0.8, ...cp },
  'bundle-3': {
    says: 'Ampacity in a bundle of 3 loaded conductors',
    dimension: 'ratio',
    value: 0.7,
    citation: 'ABYC E-11 (published for 50 V and over)',
    mark: 'mem',
  },
  'bundle-4-to-6': {
    says: 'The same for 4 to 6',
    dimension: 'ratio',
    value: 0.6,
    citation: 'ABYC E-11 (published for 50 V and over)',
    mark: 'mem',
  },
  'bundle-7-to-24': {
    says: 'The same for 7 to 24',
    dimension: 'ratio',
    value: 0.5,
    citation: 'ABYC E-11 (published for 50 V and over)',
    mark: 'mem',
  },
  'peukert-flooded': { says: 'Peukert exponent, flooded', dimension: 'ratio', value: 1.2, ...cp },
  'peukert-agm': { says: 'Peukert exponent, absorbed glass mat', dimension: 'ratio', value: 1.1, ...cp },
  'peukert-lithium': { says: 'Peukert exponent, lithium', dimension: 'ratio', value: 1.05, ...cp },
  'reserve-end': {
    says: 'Charge at which reserve with the engine off ends',
    dimension: 'ratio',
    value: 0.5,
    ...cp,
  },
  'key-off-draw': { says: 'Greatest draw with the key off', dimension: 'current', value: 0.05, ...cp },
  'ground-lead': { says: 'Longest ground lead', dimension: 'length', value: 18 * inch, ...cp },
  'loop-vehicle': { says: 'Service loop at the vehicle end', dimension: 'length', value: 12 * inch, ...cp },
  'loop-board': { says: 'Service loop on the board', dimension: 'length', value: 3 * inch, ...cp },
  'loop-speaker': { says: 'Service loop at a speaker', dimension: 'length', value: 6 * inch, ...cp },
  'tie-spacing-vehicle': {
    says: 'Ties or clips in the vehicle, apart',
    dimension: 'length',
    value: 12 * inch,
    ...cp,
  },
  'tie-spacing-board': { says: 'Ties on the board, apart', dimension: 'length', value: 6 * inch, ...cp },
  'gap-parts': { says: 'Gap between parts', dimension: 'length', value: 0.5 * inch, ...cp },
  'gap-fins': { says: 'Air at cooling fins', dimension: 'length', value: 1 * inch, ...cp },
  'gap-fan': { says: 'Air at a fan', dimension: 'length', value: 2 * inch, ...cp },
  'gap-signal-plug': { says: 'Room for signal plugs', dimension: 'length', value: 2 * inch, ...cp },
  'bend-diameters': { says: 'Least bend radius, in outside diameters', dimension: 'count', value: 4, ...cp },
  'gap-power-bend': {
    says: 'Room for a power conductor to bend',
    dimension: 'length',
    value: 3 * inch,
    ...cp,
  },
  'tool-room-knob': { says: 'Room to reach a knob', dimension: 'length', value: 3 * inch, ...cp },
  'tool-room-set-screw': {
    says: 'Straight room to reach a set screw',
    dimension: 'length',
    value: 6 * inch,
    ...cp,
  },
  'part-tolerance': { says: "Tolerance of a part's size", dimension: 'length', value: 0.003, ...cp },
  'power-signal-distance': {
    says: 'Power from signal on the board',
    dimension: 'length',
    value: 3 * inch,
    ...cp,
  },
  'web-good': { says: 'Narrowest web that is good', dimension: 'length', value: 0.025, ...cp },
  'web-limit': { says: 'Narrowest web allowed', dimension: 'length', value: 0.012, ...cp },
  'hole-edge': { says: 'Hole to edge', dimension: 'length', value: 0.012, ...cp },
  'hole-corner': { says: 'Hole to a corner, in fibreboard', dimension: 'length', value: 0.025, ...cp },
  'first-mode': {
    says: 'Lowest first natural frequency of the loaded board',
    dimension: 'frequency',
    value: 30,
    ...cp,
  },
  'first-mode-bass': { says: 'The same beside a subwoofer', dimension: 'frequency', value: 80, ...cp },
  retention: {
    says: 'Forward load that the fixings hold, in g',
    dimension: 'count',
    value: 20,
    citation: 'quoted from memory',
    mark: 'mem',
  },
  'speaker-loss': { says: 'Greatest loss in a speaker wire', dimension: 'level', value: 0.5, ...cp },
  'air-temperature': { says: 'Air temperature for delays', dimension: 'temperature', value: 20, ...cp },
  'gain-overlap': {
    says: 'How far below full scale the test tone is recorded: what a full-scale passage asks for beyond it',
    dimension: 'level',
    value: 0,
    ...cp,
  },
  'tone-bass': { says: 'Test tone for bass channels', dimension: 'frequency', value: 50, ...cp },
  'tone-others': { says: 'Test tone for other channels', dimension: 'frequency', value: 1000, ...cp },
} as const satisfies Record<string, RuleDefinition>;
export type HouseRuleName = keyof typeof houseRuleDefinitions;

/** The definition of a rule, its literal types widened. */
export function houseRuleDefinition(name: HouseRuleName): RuleDefinition {
  return houseRuleDefinitions[name];
}

/** True for the key of a house rule. */
export function isHouseRuleName(name: string): name is HouseRuleName {
  return Object.hasOwn(houseRuleDefinitions, name);
}

/** Every key, in the order of the table. */
export const houseRuleNames: readonly HouseRuleName[] =
  Object.keys(houseRuleDefinitions).filter(isHouseRuleName);

function ruleField(name: HouseRuleName) {
  const { dimension, says } = houseRuleDefinition(name);
  const field = dimension === 'count' ? count : quantity(dimension);
  return builders(field.optional().meta({ description: says }));
}

/** `rules:` of the shop file: each key optional, each value with its unit. */
export const houseRulesSchema = z.strictObject(
  Object.fromEntries(houseRuleNames.map((name) => [name, ruleField(name)])),
);

/** House rules as the plan uses them: every rule has a value, in SI, and says whether the shop gave it. */
export type HouseRules = Readonly<Record<HouseRuleName, { readonly value: number; readonly given: boolean }>>;
