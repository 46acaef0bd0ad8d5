import { type Fault, positiveFault } from '../../model/fault.ts';
import { type LengthName, printedLength } from '../../model/printed/lengths.ts';

/** Heat-shrink or expanding sleeve: from the smallest to the largest thing that it closes on. */
export interface CoveringSize {
  readonly part: string;
  /** Inside diameter as supplied, or opened (m). */
  readonly openM: number;
  /** Inside diameter recovered, or drawn tight (m): for heat-shrink `openM` over its ratio. */
  readonly closedM: number;
  readonly stockM?: number;
}

/** A size that goes over the thickest part and closes on the thinnest, or why none does. */
export type CoveringChoice =
  | { readonly chosen: CoveringSize; readonly reason: string }
  | { readonly chosen: null; readonly reason: string };

/** Room to slide it on, over the thickest part; tightness once closed, of the thinnest. */
export interface CoveringFit {
  readonly room: number;
  readonly grip: number;
}

/** Heat-shrink of a supplied diameter and shrink ratio, 3 for 3:1. */
export function heatShrink(part: string, suppliedM: number, ratio: number): CoveringSize {
  return { part, openM: suppliedM, closedM: suppliedM / ratio };
}

/**
 * The smallest covering that slides over the thickest part with room and closes on the thinnest with grip; pieces too short for `lengthM` are passed over. Fault on a diameter not above zero.
 */
export function chooseCovering(
  over: { readonly thickestM: number; readonly thinnestM: number; readonly lengthM: number },
  sizes: readonly CoveringSize[],
  { room, grip }: CoveringFit,
): CoveringChoice | Fault {
  const bad = positiveFault({
    'thickest part': over.thickestM,
    'thinnest part': over.thinnestM,
    length: over.lengthM,
  });
  if (bad) return bad;
  const needOpenM = over.thickestM * room;
  const needClosedM = over.thinnestM * grip;
  const passing = sizes.filter(({ openM }) => openM >= needOpenM - 1e-9);
  const closing = passing.filter(({ closedM }) => closedM <= needClosedM + 1e-9);
  const chosen = closing
    .filter(({ stockM }) => stockM === undefined || stockM >= over.lengthM)
    .toSorted((a, b) => a.openM - b.openM || a.part.localeCompare(b.part, 'en'))[0];
  const need = `${millimetres('room-asked', needOpenM)} open, ${millimetres('at-most', needClosedM)} closed`;
  if (chosen) return { chosen, reason: `the smallest of ${need}` };
  if (passing.length === 0) return { chosen: null, reason: `none opens wide enough: ${need}` };
  if (closing.length === 0)
    return { chosen: null, reason: `none closes far enough, a higher ratio is needed: ${need}` };
  return { chosen: null, reason: `too little on the shelf of ${need}` };
}

/** A diameter to the tenth of a millimetre. */
function millimetres(name: LengthName, lengthM: number): string {
  return printedLength(name, lengthM, { system: 'mm', fraction: 32, mmDecimals: 1 }).mm.replace(
    '.0 mm',
    ' mm',
  );
}
