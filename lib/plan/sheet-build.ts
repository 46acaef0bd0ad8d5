import type { Sheet } from '../board/plate.ts';
import type { Build } from '../board/stiffness.ts';
import type { SheetPart } from '../model/resolved-job.ts';

/** Poisson's ratio of board materials, an assumption: it moves the first mode by a few per cent. */
const poisson = 0.3;

/** A sheet of the catalogue as the plate model sees it. */
export function plateSheet({ thickness, modulus, density }: SheetPart): Sheet {
  return { thicknessM: thickness, modulusPa: modulus, poisson, densityKgM3: density };
}

/** A board of a sheet, with ribs or without. */
export function buildOf(id: string, sheet: SheetPart, ribs: Build['ribs'] = []): Build {
  return { id, sheet: plateSheet(sheet), ribs };
}
