import type { HouseRuleName } from '../../../model/house-rules.ts';

/** The house's judgement of layouts: what each thing counts for, in metres of wire. */
export interface LayoutHouse {
  /** Lattice on which places are looked for, and the finer one on which parts are brought into line, metres. */
  readonly stepM: number;
  readonly tapeM: number;
  /** A wire that is thicker than this counts for more of it, metres. */
  readonly thickM: number;
  /** Each crossing, each wire that is led far round, each bend, each quarter turn that a terminal faces off. */
  readonly crossingM: number;
  readonly farM: number;
  readonly bendM: number;
  readonly quarterM: number;
  /** Each metre that a wire of a made length lacks. */
  readonly reach: number;
  /** Each metre that a wire is longer than the house wants it. */
  readonly over: number;
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
export function layoutHouse(figure: (name: HouseRuleName) => number): LayoutHouse {
  return {
    stepM: figure('layout-step'),
    tapeM: figure('layout-tape'),
    thickM: figure('layout-thick'),
    crossingM: figure('layout-crossing'),
    farM: figure('layout-far'),
    bendM: figure('layout-bend'),
    quarterM: figure('layout-quarter'),
    reach: figure('layout-reach'),
    over: figure('layout-ground'),
    nearSignal: figure('layout-near-signal'),
    access: figure('layout-access'),
    air: figure('layout-air'),
    balance: figure('layout-balance'),
    alignmentM: figure('layout-alignment'),
    gaps: figure('layout-gaps'),
    pairM: figure('layout-pair'),
    companion: figure('layout-companion'),
    marginM: figure('layout-margin'),
    margin: figure('layout-margin-weight'),
    headM: figure('layout-head'),
  };
}

/**
 * What each metre of a wire counts for: one of a thin one as it is, of a thicker one more, in proportion to its diameter
 * (m): it takes so much more of the board, bends less, and what is lost along it is lost by much current.
 */
export function lengthWeight(diameterM: number, { thickM }: Pick<LayoutHouse, 'thickM'>): number {
  return Math.max(1, diameterM / thickM);
}

/** What places are looked for by at first: lines and gaps come out of the lattice once parts stand where they belong. */
export function roughHouse(house: LayoutHouse): LayoutHouse {
  return { ...house, alignmentM: 0, gaps: 0 };
}
