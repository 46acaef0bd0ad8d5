import { sheetFaults } from '../../../board/cut/sheet-faults.ts';
import type { CutBoard } from '../../../board/cut/sheet-pieces.ts';
import type { Rib } from '../../../board/strength/plate.ts';
import {
  evenSheet,
  inPlaneModulus,
  type LyingSheet,
  quarterTurned,
  type Sheet,
} from '../../../board/strength/sheet-stiffness.ts';
import type { Build } from '../../../board/strength/stiffness.ts';
import type { Job, SheetPart } from '../../../model/content/resolved-job.ts';
import type { HouseRules } from '../../../model/house-rules.ts';
import { type GrainWay, grainWays } from '../../../model/outline.ts';
import { planHouseRules } from '../../plan-house-rules.ts';
import type { LaidBoard } from '../laid-board.ts';

/** A board whose outline is drawn, with the sheet that it is cut from. */
export type SheetedBoard = Pick<LaidBoard, 'board' | 'shape'>;

/** True of a sheet whose plies or fibres make it stiffer one way than the other. */
function isOrthotropic(sheet: SheetPart): boolean {
  return sheet.material === 'birch-plywood' || sheet['modulus-across'] !== undefined;
}

/**
 * A sheet of the catalogue as the plate model sees it, the grain of its face along x. What its part does not state
 * comes from the house rules.
 */
export function plateSheet(part: SheetPart, rules: HouseRules): Sheet {
  const { thickness: thicknessM, density: densityKgM3, modulus: modulusPa } = part;
  const shearPa = part['shear-modulus'];
  if (!isOrthotropic(part)) {
    const even = evenSheet({ thicknessM, densityKgM3, modulusPa, poisson: rules['sheet-poisson'].value });
    return shearPa === undefined ? even : { ...even, shearPa };
  }
  return {
    ...{ thicknessM, densityKgM3, modulusXPa: modulusPa },
    modulusYPa: part['modulus-across'] ?? modulusPa * rules['plywood-across'].value,
    shearPa: shearPa ?? rules['plywood-shear'].value,
    poisson: rules['plywood-poisson'].value,
  };
}

/** What of the stiffness of a sheet its part does not state, in the words of a message. */
function assumedOf(part: SheetPart): string[] {
  if (!isOrthotropic(part)) return [];
  return [
    ...(part['modulus-across'] === undefined ? ['its modulus across the grain'] : []),
    ...(part['shear-modulus'] === undefined ? ['its shear modulus'] : []),
  ];
}

/** The modulus of a strip along its length, Pa: along the grain where the sheet tells how that runs, else the lower one. */
export function stripModulus(part: SheetPart, rules: HouseRules): number {
  const sheet = plateSheet(part, rules);
  const bendingPa =
    part.grain === undefined ? Math.min(sheet.modulusXPa, sheet.modulusYPa) : sheet.modulusXPa;
  return inPlaneModulus(bendingPa, sheet);
}

/** A board as it is cut, bare, its grain as it may be asked for. */
export function bareCut({ board, shape }: SheetedBoard, grain: GrainWay | null): CutBoard {
  const { id, sheetId, sheet } = board;
  return {
    ...{ id, title: id, sheet: sheetId, material: sheet.material, grain },
    ...{ sheetWidthM: sheet.width, sheetHeightM: sheet.height, sheetGrain: sheet.grain ?? null },
    outline: [...shape.outline],
    cutouts: shape.cutouts.map((loop) => [...loop]),
    ...{ holes: [], pieces: [], ribs: [] },
  };
}

/**
 * A board of its sheet, with ribs or without, as the plate model bends it. The grain runs as the job writes it, where
 * the sheet tells how it runs there; else it may lie either way, and of these the ways are kept that come out of the
 * sheet.
 */
export function buildOf(job: Job, laid: SheetedBoard, ribs: readonly Rib[]): Build {
  const { sheetId: id, sheet: part, given } = laid.board;
  const along = plateSheet(part, job.rules);
  const common = { id, ribs, assumed: assumedOf(part) };
  if (!isOrthotropic(part)) return { ...common, ways: [{ grain: null, sheet: along }], kept: [] };
  const lying: { readonly [K in GrainWay]: Sheet } = { level: along, upright: quarterTurned(along) };
  const wayOf = (grain: GrainWay): LyingSheet => ({ grain, sheet: lying[grain] });
  const written = given.outline.grain;
  if (written !== undefined && part.grain !== undefined)
    return { ...common, ways: [wayOf(written)], kept: [] };
  const rules = planHouseRules(job);
  const comesOut = (grain: GrainWay) => sheetFaults(bareCut(laid, grain), rules).length === 0;
  const kept = part.grain === undefined ? [] : grainWays.filter(comesOut);
  return { ...common, ways: grainWays.map(wayOf), kept };
}
