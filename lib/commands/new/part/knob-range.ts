import { faultBy } from '../../../model/fields.ts';
import { audible, boostLevel, signalVoltage } from '../../../model/kinds/fields/bounds.ts';
import { parseQuantity } from '../../../model/quantity/quantity.ts';
import type { Row } from '../ask/rows.ts';

/** What a knob reaches from one stop to the other, as it is told in one cell. */
export interface KnobRange {
  /** What a knob with a filter of its own passes. */
  readonly pass: string | null;
  /** The frequency about which a boost raises the level. */
  readonly centre: string | null;
  readonly from: string;
  readonly to: string;
}

const frequency = String.raw`\d\S* ?[kM]?Hz`;
const between = /\s+(?:to|-|\u2013)\s+/;

/**
 * The range of a knob: `50 Hz to 500 Hz`, `low-pass 40 to 200 Hz`, `45 Hz 0 dB to 12 dB`, `0 - 12 dB at 45 Hz`. An end
 * without a unit has that of the other. Null for what is none, such as the positions of a switch.
 */
export function knobRange(sets: string): KnobRange | null {
  if (sets.includes('=')) return null;
  const [, pass, before, span = '', behind] =
    new RegExp(
      `^(?:(high-pass|low-pass|subsonic)\\s+)?(?:(${frequency})\\s+(?!to\\s|-\\s|\\u2013\\s))?(.*?)(?:\\s+at\\s+(${frequency}))?$`,
    ).exec(sets.trim()) ?? [];
  const [first, last, ...more] = span.split(between);
  if (!first || !last || more.length > 0) return null;
  const unit = unitOf(last);
  const isBare = unitOf(first) === '';
  return {
    pass: pass ?? null,
    centre: before ?? behind ?? null,
    from: isBare && unit !== '' ? `${first} ${unit}` : first,
    to: last,
  };
}

function unitOf(written: string): string {
  return /[^\d\s.,/+-]+$/.exec(written)?.[0] ?? '';
}

/** What is wrong with the range of a gain or of a boost, which no filter tells; null where nothing is. */
export function rangeFault({ what, sets }: Row['cells']): string | null {
  const range = sets === undefined ? null : knobRange(String(sets));
  if (!range) return null;
  const ends = [range.from, range.to];
  if (what === 'gain' && ends.some((end) => faultBy(signalVoltage, end) !== null))
    return `from what to what of a gain is the voltage that its inputs take for full output, such as 6 V to 0.2 V; leave it empty where it is told otherwise`;
  if (what !== 'boost') return null;
  const form = 'write where it raises and how far, 45 Hz 0 dB to 12 dB';
  if (range.centre === null) return `from what to what lacks the frequency of the boost: ${form}`;
  const isWrong = faultBy(audible, range.centre) !== null || ends.some((end) => faultBy(boostLevel, end));
  return isWrong ? `from what to what is no boost: ${form}` : null;
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
