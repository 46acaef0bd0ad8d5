import type { ConductorRole } from '../model/vocabulary.ts';
import { drawConductor } from './conductor-line.ts';
import { baselineFor, drawText } from './lettering.ts';
import { at, type PaperPoint } from './paper.ts';
import type { Parent } from './pen.ts';
import { roleStyles, types } from './style.ts';
import type { Drawing } from './surface.ts';

const sampleMm = 20;
const gapMm = 3;

/** Height of one line of a key. */
export const keyPitchMm = 5;

/** Draws what each conductor line means, one below the other, only the roles that the drawing has. */
export function drawRoleKey(
  drawing: Drawing,
  parent: Parent,
  topLeft: PaperPoint,
  roles: readonly ConductorRole[],
): void {
  roles.forEach((role, index) => {
    const middleMm = topLeft.yMm + (index + 0.5) * keyPitchMm;
    drawConductor(parent, [at(topLeft.xMm, middleMm), at(topLeft.xMm + sampleMm, middleMm)], role);
    const point = at(topLeft.xMm + sampleMm + gapMm, baselineFor(middleMm, types.note));
    drawText(drawing, parent, roleStyles[role].name, point, { type: types.note });
  });
}
