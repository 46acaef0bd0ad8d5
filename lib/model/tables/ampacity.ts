import type { Mark } from '../trace.ts';
import { awgAreaMm2 } from './awg-sizes.ts';

/** Insulation temperatures (C) that the ampacity table knows. */
export const insulationRatingsC = [60, 75, 80, 90, 105, 125, 200] as const;
export type InsulationRatingC = (typeof insulationRatingsC)[number];

type Row = readonly [number, number, number, number, number, number, number];

/**
 * Allowable amperage (A) of insulated stranded copper conductors in circuits under 50 V at 30 C ambient, one
 * column for each of `insulationRatingsC`: 33 CFR 183.425, Table 5. Thin to thick.
 */
const table5: readonly (readonly [awg: string, row: Row])[] = [
  ['18', [10, 10, 15, 20, 20, 25, 25]],
  ['16', [15, 15, 20, 25, 25, 30, 35]],
  ['14', [20, 20, 25, 30, 35, 40, 45]],
  ['12', [25, 25, 35, 40, 45, 50, 55]],
  ['10', [40, 40, 50, 55, 60, 70, 70]],
  ['8', [55, 65, 70, 70, 80, 90, 100]],
  ['6', [80, 95, 100, 100, 120, 125, 135]],
  ['4', [105, 125, 130, 135, 160, 170, 180]],
  ['3', [120, 145, 150, 155, 180, 195, 210]],
  ['2', [140, 170, 175, 180, 210, 225, 240]],
  ['1', [165, 195, 210, 210, 245, 265, 280]],
  ['1/0', [195, 230, 245, 245, 285, 305, 325]],
  ['2/0', [225, 265, 285, 285, 330, 355, 370]],
  ['3/0', [260, 310, 330, 330, 385, 410, 430]],
  ['4/0', [300, 360, 385, 385, 445, 475, 510]],
];

/** The citation of every figure from the ampacity table. */
export const ampacityCitation = '33 CFR 183.425, Table 5';
/** The ambient (C) that the table holds for. */
export const tableAmbientC = 30;

/** A row of the table: the AWG size whose figures apply. */
export interface AmpacityRow {
  readonly awg: string;
  readonly areaMm2: number;
  /** Allowable amperage (A) at 30 C for one of the insulation temperatures of the table. */
  amperageA(insulationC: InsulationRatingC): number;
}

/** All rows, thin to thick (18 AWG to 4/0). */
export const ampacityRows: readonly AmpacityRow[] = table5.map(([awg, row]) => ({
  awg,
  areaMm2: awgAreaMm2(awg),
  amperageA: (insulationC) => row[insulationRatingsC.indexOf(insulationC)] ?? 0,
}));

/** Areas are compared with this much grace, so that 4 AWG written as 21.15 mm2 is still 4 AWG. */
const areaGrace = 1.001;

/** The row of the largest AWG size whose area is at or below the given one; null under 18 AWG. */
export function ampacityRow(areaMm2: number): AmpacityRow | null {
  return ampacityRows.findLast((row) => row.areaMm2 <= areaMm2 * areaGrace) ?? null;
}

/** The column for an insulation temperature: the highest rating at or below it; null under 60 C. */
export function insulationColumn(insulationC: number): InsulationRatingC | null {
  return insulationRatingsC.findLast((rating) => rating <= insulationC) ?? null;
}

/** A factor with its mark: `mem` is from memory, to be confirmed against the regulation. */
export interface MarkedFactor {
  readonly factor: number;
  readonly mark?: Mark;
  /** The published figure is in doubt: the square-root rule at 50 C applies where it gives less. */
  readonly doubtful?: true;
}

/** Factor on the table in an engine space (50 C ambient): 33 CFR 183.425, Table 5, note 1. */
export const engineSpaceFactors: Readonly<Record<InsulationRatingC, MarkedFactor>> = {
  60: { factor: 0.58, mark: 'mem' },
  75: { factor: 0.75, mark: 'mem' },
  80: { factor: 0.78, mark: 'mem' },
  90: { factor: 0.82, mark: 'mem' },
  105: { factor: 0.85 },
  125: { factor: 0.89, mark: 'mem' },
  200: { factor: 1.0, mark: 'mem', doubtful: true },
};
/** The ambient (C) that the engine-space factors stand for. */
export const engineSpaceAmbientC = 50;

/** Sizes thinner than the ampacity table, for which a house rule sets the largest fuse. */
const thinSizes = ['20', '22', '24'] as const;

/** The size that a conductor under 18 AWG counts as: the largest of them at or below its area; null under 24 AWG. */
export function thinWireSize(areaMm2: number): (typeof thinSizes)[number] | null {
  return thinSizes.find((awg) => awgAreaMm2(awg) <= areaMm2 * areaGrace) ?? null;
}
