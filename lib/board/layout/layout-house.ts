import type { HouseRuleName } from '../../model/house-rules.ts';

/** The house's judgement of layouts: what each thing counts for, in metres of wire. */
export interface LayoutHouse {
  /** Lattice on which places are looked for, and the finer one on which parts are brought into line, metres. */
  readonly stepM: number;
  readonly tapeM: number;
  /** Each crossing, each bend, each quarter turn that a terminal faces off. */
  readonly crossingM: number;
  readonly bendM: number;
  readonly quarterM: number;
  /** Each metre that a wire of a made length lacks. */
  readonly reach: number;
  /** Each metre that signal lacks to power, that plugs and bends lack, that air and gaps lack, that balance is off. */
  readonly nearSignal: number;
  readonly access: number;
  readonly air: number;
  readonly balance: number;
  /** Each part and axis out of line, each metre that gaps differ, each pair of like parts out of order. */
  readonly alignmentM: number;
  readonly gaps: number;
  readonly pairM: number;
  /** Each metre between a ground bar and its distribution. */
  readonly companion: number;
  /** The margin that is wanted, metres, and each metre of it that is missing. */
  readonly marginM: number;
  readonly margin: number;
  /** Each head of a fixing before a panel. */
  readonly headM: number;
}

/** The judgement of a house by its rules. */
export function layoutHouse(valueOf: (name: HouseRuleName) => number): LayoutHouse {
  return {
    stepM: valueOf('layout-step'),
    tapeM: valueOf('layout-tape'),
    crossingM: valueOf('layout-crossing'),
    bendM: valueOf('layout-bend'),
    quarterM: valueOf('layout-quarter'),
    reach: valueOf('layout-reach'),
    nearSignal: valueOf('layout-near-signal'),
    access: valueOf('layout-access'),
    air: valueOf('layout-air'),
    balance: valueOf('layout-balance'),
    alignmentM: valueOf('layout-alignment'),
    gaps: valueOf('layout-gaps'),
    pairM: valueOf('layout-pair'),
    companion: valueOf('layout-companion'),
    marginM: valueOf('layout-margin'),
    margin: valueOf('layout-margin-weight'),
    headM: valueOf('layout-head'),
  };
}
