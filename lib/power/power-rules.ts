import type { FuseFormId } from '../model/tables/fuse-forms.ts';

/** Materials of a conductor. */
export type ConductorMaterial = 'copper' | 'copper-clad-aluminium';

/** A factor for bundles of up to so many loaded conductors. */
export interface BundleFactor {
  readonly upTo: number;
  readonly factor: number;
}

/** Limits, factors and defaults that a shop may set for its power computations. */
export interface PowerRules {
  /** Temperature of a conductor for its hot resistance (C). */
  readonly conductorC: number;
  /** Resistance of a stranded conductor against a solid one of its size. */
  readonly strandedFactor: number;
  /** Insulation temperature of a conductor without a mark (C). */
  readonly unmarkedInsulationC: number;
  /** Factor for a conductor under loom or carpet. */
  readonly coveredFactor: number;
  /** Factors for bundles of loaded conductors, small to large; more than the last counts as the last. */
  readonly bundleFactors: readonly BundleFactor[];
  /** Conductivity of copper-clad aluminium against annealed copper. */
  readonly claddedConductivity: number;
  /** Temperature coefficient of copper-clad aluminium at 20 C (per K). */
  readonly claddedPerK: number;
  /** Largest drop of feed plus return, as a share of the source voltage. */
  readonly dropShare: number;
  /** Fuse rating over the rated current of what it feeds. */
  readonly fuseMargin: number;
  /** Largest fuse over the ampacity of what it protects. */
  readonly fuseOverAmpacity: number;
  /** Duty of music against full power: ordinary, and heavy bass. */
  readonly musicDuty: number;
  readonly heavyBassDuty: number;
  /** Voltage for sizing, at hot idle (V). */
  readonly sizingV: number;
  /** Voltage at which makers rate power (V). */
  readonly ratedPowerV: number;
  /** Charge left at which the reserve ends, as a share. */
  readonly reserveShare: number;
  /** Charge that a battery gives back, of what it takes up. */
  readonly chargeEfficiency: number;
  /** Demand over alternator output from which an upgrade is asked for. */
  readonly chargingShare: number;
  /** Most current drawn with everything switched off (A). */
  readonly keyOffA: number;
  /** Most lugs on one stud. */
  readonly mostLugsOnStud: number;
  /** Largest fuse (A) for each size thinner than the ampacity table. */
  readonly thinWireA: Readonly<Record<'20' | '22' | '24', number>>;
  /** Fault current (A) that a main fuse must interrupt, by the cold-cranking amperes of its batteries. */
  readonly interruptNeeds: { readonly to650A: number; readonly to1100A: number; readonly aboveA: number };
  /** Fault current (A) that a fuse interrupts where its maker is silent. */
  readonly formInterruptA: Readonly<Record<FuseFormId, number>>;
  /** Bend radius over outside diameter. */
  readonly bendDiameters: number;
}

/**
 * The defaults, all common practice without a source except: bundle factors, lugs on a stud and interrupting needs (ABYC
 * E-11, from memory); conductivity of copper-clad aluminium (ASTM B566, 10 % copper by volume, from memory);
 * what fuses interrupt (from memory).
 */
export const defaultPowerRules: PowerRules = {
  conductorC: 60,
  strandedFactor: 1.02,
  unmarkedInsulationC: 60,
  coveredFactor: 0.8,
  bundleFactors: [
    { upTo: 2, factor: 1 },
    { upTo: 3, factor: 0.7 },
    { upTo: 6, factor: 0.6 },
    { upTo: 24, factor: 0.5 },
    { upTo: 999, factor: 0.4 },
  ],
  claddedConductivity: 0.62,
  claddedPerK: 0.004,
  dropShare: 0.03,
  fuseMargin: 1.25,
  fuseOverAmpacity: 1,
  musicDuty: 1 / 8,
  heavyBassDuty: 1 / 3,
  sizingV: 13.8,
  ratedPowerV: 14.4,
  reserveShare: 0.5,
  chargeEfficiency: 0.85,
  chargingShare: 0.8,
  keyOffA: 0.05,
  mostLugsOnStud: 4,
  thinWireA: { '20': 7.5, '22': 5, '24': 2 },
  interruptNeeds: { to650A: 1500, to1100A: 3000, aboveA: 5000 },
  formInterruptA: {
    'micro-blade': 1000,
    'low-profile-mini-blade': 1000,
    'mini-blade': 1000,
    'standard-blade': 1000,
    'maxi-blade': 1000,
    'bolt-in-30mm': 1000,
    'small-bolt-in': 1000,
    'large-bolt-in': 1000,
    'bolt-in-51mm': 1000,
    'class-t': 20000,
  },
  bendDiameters: 5,
};
