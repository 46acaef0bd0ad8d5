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
 * A battery, alternator or converter; `from` is its positive terminal: V(from) - V(to) = emfV + ohm * currentA,
 * with currentA below zero while it delivers. `limitA` is the most that it delivers, `acceptA` the most that
 * it takes back. A source with a limit and no `acceptA` takes nothing back (rectifier); one with neither is
 * unbounded both ways.
 */
export interface EmfSource extends Between {
  readonly kind: 'source';
  readonly model: 'emf';
  readonly emfV: number;
  readonly ohm: number;
  readonly limitA?: number;
  readonly acceptA?: number;
}

/** A source that delivers `givenA` out of `from` whatever the voltage: its currentA is -givenA. */
export interface CurrentSource extends Between {
  readonly kind: 'source';
  readonly model: 'current';
  readonly givenA: number;
}

/** A conductor, fuse or joint. Under 10 nanoohm it counts as no resistance at all. */
export interface PassiveElement extends Between {
  readonly kind: 'conductor' | 'fuse' | 'joint';
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

export type Load = PowerLoad | SquareLawLoad | CurrentLoad | ResistanceLoad;
export type NetworkElement = EmfSource | CurrentSource | PassiveElement | Load;

export interface Network {
  /** The node that counts as 0 V. */
  readonly referenceNode: string;
  readonly elements: readonly NetworkElement[];
  /** Where given, every node must be one of these. */
  readonly nodes?: readonly string[];
}

/** What makes a network impossible to compute, named by the elements and nodes that are to blame. */
export interface NetworkFault {
  readonly kind:
    | 'duplicate-id'
    | 'unknown-node'
    | 'not-a-number'
    | 'negative-value'
    | 'joined-to-itself'
    | 'zero-resistance-loop'
    | 'short-circuit'
    | 'stiff-sources-in-parallel'
    | 'floating';
  readonly elements: readonly string[];
  readonly nodes: readonly string[];
  readonly message: string;
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
  /** currentA^2 * ohm of a conductor, fuse, joint or inside a source; 0 for a load, whose heat depends on its efficiency. */
  readonly heatW: number;
  /** How a bounded source runs: holding its voltage, at its limit, or taking what it accepts (0 A for a rectifier). */
  readonly regime?: SourceRegime;
}
export type SourceRegime = 'set-point' | 'limited' | 'accepting';

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
