import type { FuseFormId } from '../model/tables/fuse-forms.ts';

/** A factor for bundles of up to so many loaded conductors. */
export interface BundleFactor {
  readonly upTo: number;
  readonly factor: number;
}

/** What a shop may set for its power computations: its house rules, handed over by whoever asks. */
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
  /** Voltage for sizing, at hot idle (V). */
  readonly sizingV: number;
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
}
