import type { NetworkFault } from './network-fault.ts';

/**
 * A direct-current network as the plan keeps it. Every element lies between two named nodes and counts its
 * current from `from` to `to`; `dropV` is V(from) - V(to). The product of both is the power that the
 * element takes: positive for a load, negative for a source that delivers.
 */
interface Between {
  readonly id: string;
  /** The device, wire or fuse that the element stands for. */
  readonly of?: string;
  readonly from: string;
  readonly to: string;
}

/**
 * An alternator, or whatever else holds a voltage; `from` is its positive terminal: V(from) - V(to) = emfV + ohm *
 * currentA, with currentA below zero while it delivers. `limitA` is the most that it delivers; a source with one takes
 * nothing back (rectifier), one without is unbounded both ways.
 */
export interface EmfSource extends Between {
  readonly kind: 'source';
  readonly model: 'emf';
  readonly emfV: number;
  readonly ohm: number;
  readonly limitA?: number;
}

/**
 * A battery; `from` is its positive terminal. Below `emfV` it delivers behind `ohm`, above it takes charge behind
 * `chargeOhm`, which is larger, and at most `acceptA`: the voltage over it is emfV + ohm * currentA where currentA is
 * below zero, else emfV + chargeOhm * currentA, and at `acceptA` anything above that.
 */
export interface TwoSlopeSource extends Between {
  readonly kind: 'source';
  readonly model: 'two-slope';
  readonly emfV: number;
  readonly ohm: number;
  readonly chargeOhm: number;
  readonly acceptA: number;
}
export type VoltageSource = EmfSource | TwoSlopeSource;

/** A source that delivers `givenA` out of `from` whatever the voltage: its currentA is -givenA. */
export interface CurrentSource extends Between {
  readonly kind: 'source';
  readonly model: 'current';
  readonly givenA: number;
}

/** What has a resistance of its own between two nodes. */
export type PassiveKind = 'conductor' | 'fuse' | 'joint';

/** A conductor, fuse or joint. Under 10 nanoohm it counts as no resistance at all. */
export interface PassiveElement extends Between {
  readonly kind: PassiveKind;
  readonly model: 'resistance';
  readonly ohm: number;
}

interface LoadBase extends Between {
  readonly kind: 'load';
  /** Below this voltage at its terminals the device switches itself off. */
  readonly cutoutV?: number;
}
/** Regulated supply: takes `powerW` at any voltage. */
export interface PowerLoad extends LoadBase {
  readonly model: 'power';
  readonly powerW: number;
}
/** Unregulated supply: takes powerW * (V / ratedV)^2. */
export interface SquareLawLoad extends LoadBase {
  readonly model: 'square-law';
  readonly powerW: number;
  readonly ratedV: number;
}
/** Takes `givenA` at any voltage. */
export interface CurrentLoad extends LoadBase {
  readonly model: 'current';
  readonly givenA: number;
}
/** A plain resistance. */
export interface ResistanceLoad extends LoadBase {
  readonly model: 'resistance';
  readonly ohm: number;
}

/**
 * The side of a converter that draws: it takes what the source `feeds` delivers over `efficiency`, at any voltage, and
 * nothing while that delivers nothing. One that is switched off is not listed, and neither is the source that it feeds.
 */
export interface ConverterLoad extends LoadBase {
  readonly model: 'converter';
  /** The id of its other side: a source with a limit. */
  readonly feeds: string;
  readonly efficiency: number;
}

export type Load = PowerLoad | SquareLawLoad | CurrentLoad | ResistanceLoad | ConverterLoad;
export type NetworkElement = VoltageSource | CurrentSource | PassiveElement | Load;

export interface Network {
  /** The node that counts as 0 V. */
  readonly referenceNode: string;
  readonly elements: readonly NetworkElement[];
  /** Where given, every node must be one of these. */
  readonly nodes?: readonly string[];
}

export interface NodeVoltage {
  readonly id: string;
  readonly voltageV: number;
}

/** What flows in one element. */
export interface ElementFlow {
  readonly id: string;
  /** From `from` to `to`. */
  readonly currentA: number;
  /** V(from) - V(to). */
  readonly dropV: number;
  /**
   * currentA^2 * ohm of a conductor, fuse, joint or inside a source; in a battery its current times what its voltage
   * differs from its emf; 0 for a load, whose heat depends on its efficiency.
   */
  readonly heatW: number;
  readonly regime?: SourceRegime;
}
/**
 * How a bounded source runs, from a low voltage over it to a high one: at its limit, holding its voltage behind `ohm`,
 * charging behind `chargeOhm`, taking all that it accepts (0 A for a rectifier).
 */
export type SourceRegime = 'limited' | 'set-point' | 'charging' | 'accepting';

interface Flows {
  readonly referenceNode: string;
  readonly nodes: readonly NodeVoltage[];
  readonly elements: readonly ElementFlow[];
  /** The largest current that is unaccounted for at any node. */
  readonly residualA: number;
}
/** All loads are fed above their cut-out. */
export interface SolvedNetwork extends Flows {
  readonly state: 'solved';
}
/** The voltages are those with every load on; the loads in `cutOut` would switch off there. */
export interface CutOutNetwork extends Flows {
  readonly state: 'cut-out';
  readonly cutOut: readonly string[];
  readonly reason: string;
}
/** The loads can't be fed: no voltages fulfil the network. */
export interface UnsolvableNetwork {
  readonly state: 'no-solution';
  readonly referenceNode: string;
  readonly reason: string;
  /** The load at which the voltage gives way first, where one can be told. */
  readonly weakestLoad?: string;
  /** The share of all constant-power and constant-current loads up to which the network can be fed. */
  readonly greatestShare?: number;
}
/** The network as written can't be computed. */
export interface FaultyNetwork {
  readonly state: 'fault';
  readonly referenceNode: string;
  readonly faults: readonly NetworkFault[];
}
export type NetworkResult = SolvedNetwork | CutOutNetwork | UnsolvableNetwork | FaultyNetwork;
