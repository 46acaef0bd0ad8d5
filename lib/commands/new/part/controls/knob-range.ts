import type { z } from 'zod';
import { faultBy } from '../../../../model/fields.ts';
import { audible, boostLevel, outputLevel, signalVoltage } from '../../../../model/kinds/fields/bounds.ts';
import { parseQuantity } from '../../../../model/quantity/quantity.ts';
import type { OffStop } from '../../../../model/vocabulary.ts';
import type { Row } from '../../ask/rows.ts';

/** What a knob reaches from one stop to the other, as it is told in one cell. */
export interface KnobRange {
  /** What a knob with a filter of its own passes. */
  readonly pass: string | null;
  /** The frequency about which a boost raises the level. */
  readonly centre: string | null;
  /** The stop at which it has an OFF beyond its range. */
  readonly off: OffStop | null;
  readonly from: string;
  readonly to: string;
}

const frequency = String.raw`\d\S* ?[kM]?Hz`;
const between = /\s+(?:to|-|\u2013)\s+|(?<=[\dA-Za-z])\.{2,3}(?=[-+\u2212\d])/;

/**
 * The range of a knob: `50 Hz to 500 Hz`, `low-pass 40 to 200 Hz`, `45 Hz 0 dB to 12 dB`, `0 - 12 dB at 45 Hz`,
 * `-12..0 dB`, `low-pass 40 Hz to 160 Hz OFF`. An end without a unit has that of the other. Null for what is none, such
 * as the positions of a switch.
 */
export function knobRange(sets: string): KnobRange | null {
  if (sets.includes('=')) return null;
  const [, pass, before, first = '', span = '', last = '', behind] =
    new RegExp(
      `^(?:(high-pass|low-pass|subsonic)\\s+)?(?:(${frequency})\\s+(?!to\\s|-\\s|\\u2013\\s|OFF$))?(OFF\\s+(?!to\\s|-\\s|\\u2013\\s))?(.*?)((?<!\\s(?:to|-|\\u2013))\\s+OFF)?(?:\\s+at\\s+(${frequency}))?$`,
      'i',
    ).exec(sets.trim()) ?? [];
  const [from, to, ...more] = span.split(between);
  if (!from || !to || more.length > 0) return null;
  const unit = unitOf(to);
  const isBare = unitOf(from) === '';
  return {
    pass: pass?.toLowerCase() ?? null,
    centre: before ?? behind ?? null,
    off: first !== '' ? 'lowest' : last !== '' ? 'highest' : null,
    from: isBare && unit !== '' ? `${from} ${unit}` : from,
    to,
  };
}

function unitOf(written: string): string {
  return /[^\d\s.,/+-]+$/.exec(written)?.[0] ?? '';
}

const corners = 'write both corners, with what its own filter passes before them: low-pass 50 Hz to 500 Hz';
const withOff =
  'of one that ends in OFF the word before both, where OFF lies fully counter-clockwise, or behind them: subsonic OFF 15 Hz to 45 Hz, low-pass 40 Hz to 160 Hz OFF';
const raised = 'write where it raises and how far, 45 Hz 0 dB to 12 dB';

/** What is wrong with the range of a knob, by what it sets; null where nothing is. */
export function rangeFault({ what, sets }: Row['cells']): string | null {
  const range = sets === undefined ? null : knobRange(String(sets));
  if (!range) return null;
  const ends = [range.from, range.to];
  const isNo = (field: z.ZodType) => ends.some((end) => !isOff(end) && faultBy(field, end) !== null);
  const hasOff = ends.some(isOff);
  switch (what) {
    case 'gain':
      return isNo(signalVoltage) || hasOff
        ? `from what to what of a gain is the voltage that its inputs take for full output, such as 6 V to 0.2 V${hasOff ? ', of one that ends in OFF beside it: OFF 6 V to 0.2 V' : ''}; leave it empty where it is told otherwise`
        : null;
    case 'level':
      return isNo(outputLevel)
        ? 'from what to what of a level is how far it goes in dB, such as -12 dB to 0 dB, or OFF to 0 dB; leave it empty where the leaflet is silent'
        : null;
    case 'boost':
      if (range.centre === null) return `from what to what lacks the frequency of the boost: ${raised}`;
      return faultBy(audible, range.centre) !== null || isNo(boostLevel)
        ? `from what to what is no boost: ${raised}`
        : null;
    default:
      return cornersFault(
        what === 'subsonic' ? { ...range, pass: 'subsonic' } : range,
        isNo(audible),
        hasOff,
      );
  }
}

function cornersFault({ pass, off, from, to }: KnobRange, isNo: boolean, hasOff: boolean): string | null {
  if (hasOff) return `from what to what has OFF for one of its corners: ${corners}; ${withOff}`;
  if (isNo)
    return `from what to what has "${from} to ${to}", and this control sets a frequency: ${corners}; a range in dB is that of a level or a boost, and a knob whose ends tell nothing is knob alone`;
  return off !== null && pass === null
    ? `from what to what ends in OFF and tells no filter: ${corners}; ${withOff}`
    : null;
}

/** True for an end of a range that is no figure but the word OFF. */
export function isOff(end: string): boolean {
  return /^off$/i.test(end);
}

/** What the inputs of a gain take by its range, the least first, as files have it; null where none is told. */
export function inputRange({ what, sets }: Row['cells']): string | null {
  const range = what !== 'gain' || sets === undefined ? null : knobRange(String(sets));
  if (!range) return null;
  const volts = [range.from, range.to].map((written) => ({
    written,
    volt: parseQuantity(written, 'voltage'),
  }));
  const [least, most] = volts.toSorted((a, b) => Number(a.volt) - Number(b.volt));
  return least && most ? `${least.written} to ${most.written}` : null;
}
