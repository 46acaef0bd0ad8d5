import { fusesText, type NumberedFuse } from '../../draw/packet/numbered-fuses.ts';
import { voltsAllowed } from '../../model/printed/told.ts';

/** Jump start and charging, in the order in which it is done. */
export function jumpStartWords(mains: readonly NumberedFuse[], highestV: number): readonly string[] {
  return [
    'Switch the music off first, and leave it off until the engine runs steadily.',
    'Connect the cables only at the points and in the order that the handbook of the vehicle names. Never connect them to an amplifier, or to a cable of the music system.',
    mains.length > 0
      ? `Charge at the points that the handbook names. A charger that goes above ${voltsAllowed(highestV)}: a workshop takes ${fusesText(mains.map(({ number }) => number))} out first, and puts the rating back that stands in the table of fuses.`
      : `Charge at the points that the handbook names, at ${voltsAllowed(highestV)} at most.`,
  ];
}
