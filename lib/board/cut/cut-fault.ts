import { figure } from '../../model/printed/told.ts';
import { type BoardRemark, length, phrase } from '../remark.ts';

/** What a cut that is too large for the board can be called. */
type SizedCutFault =
  | 'corner-cut-longer-than-edge'
  | 'corner-radius-too-large'
  | 'notch-wider-than-edge'
  | 'notch-past-end-of-edge'
  | 'slot-wider-than-long';

/** A cut as written is longer, wider or rounder than there is board for. */
export function tooLarge(
  rule: SizedCutFault,
  cut: string,
  what: string,
  foundM: number,
  limitM: number,
  against: string,
): BoardRemark {
  return {
    rule,
    level: 'stop',
    of: [cut],
    message: phrase`${cut}: ${what} of ${length('size', foundM)} is more than ${against}, ${length('at-most', limitM)}, by ${length('overlap', foundM - limitM)}`,
    value: foundM,
    limit: limitM,
    unit: 'm',
    remedy: 'measure again; the cut is left out of the board until it fits',
  };
}

/** A size that has to be above zero is not. */
export function notPositive(cut: string, what: string, foundM: number): BoardRemark {
  return {
    rule: 'cut-without-size',
    level: 'stop',
    of: [cut],
    message: phrase`${cut}: ${what} is ${length('size', foundM)}, but has to be above zero`,
    value: foundM,
    limit: 0,
    unit: 'm',
    remedy: 'measure again; the cut is left out of the board',
  };
}

/** A cut names a corner, an edge or an end that the base shape does not have. */
export function noSuchPlace(cut: string, place: string, known: string): BoardRemark {
  return {
    rule: 'cut-without-place',
    level: 'stop',
    of: [cut],
    message: `${cut}: the board has no ${place} of its own (it has ${known})`,
    remedy: 'call it by another name or by its number; the cut is left out of the board',
  };
}

/** A cut reaches out of the board. */
export function outside(cut: string, byM: number): BoardRemark {
  return {
    rule: 'cut-outside-board',
    level: 'stop',
    of: [cut],
    message: phrase`${cut}: reaches ${length('overlap', byM)} out of the board`,
    value: byM,
    limit: 0,
    unit: 'm',
    remedy: 'measure again, or make it a notch; the cut is left out of the board',
  };
}

/** A cut leaves the board in pieces, or leaves nothing of it. */
export function inPieces(cut: string, pieces: number): BoardRemark {
  return {
    rule: 'board-in-pieces',
    level: 'stop',
    of: [cut],
    message:
      pieces === 0 ? `${cut}: takes away the whole board` : `${cut}: cuts the board into ${pieces} pieces`,
    value: pieces,
    limit: 1,
    unit: '',
    remedy: 'make the cut smaller, or write two boards; the cut is left out of the board',
  };
}

/** Two cuts take the same material. */
export function overlap(cut: string, other: string, areaM2: number): BoardRemark {
  return {
    rule: 'cuts-overlap',
    level: 'caution',
    of: [cut, other],
    message: `${cut} and ${other} take away the same ${figure(areaM2 * 1e6)} mm2`,
    value: areaM2,
    limit: 0,
    unit: 'm2',
    remedy: 'check that both are measured from where they say',
  };
}

/** The geometry of a cut could not be worked out: lines that nearly fall together. */
export function notResolved(cut: string): BoardRemark {
  return {
    rule: 'cut-not-resolved',
    level: 'stop',
    of: [cut],
    message: `${cut}: its lines nearly fall together with those of the board or of another cut`,
    remedy: 'move it by a millimetre; the cut is left out of the board',
  };
}
