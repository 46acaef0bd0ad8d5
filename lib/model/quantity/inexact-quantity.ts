import type { Dimension } from './dimensions.ts';

/** Whether a text is a quantity of the dimension that is asked for. */
type Reads = (text: string) => boolean;

/** What is wrong with a text that tells no quantity, or more than one: the predicate of a sentence. */
export interface Inexact {
  readonly says: string;
  /** True where it tells what to write. */
  readonly isWhole: boolean;
}

/**
 * Tells a text in which a quantity stands beside something else: nobody knows it yet, it is a range, it has a word before
 * or behind it, it is in degrees of Fahrenheit, in pounds and ounces. What is meant is told where that is certain, and
 * never taken. Null for another text.
 */
export function inexactQuantity(text: string, dimension: Dimension, reads: Reads): Inexact | null {
  if (/^(?:\?+|tbd|tba|unknown|n\/?a|none|-+|x+)$/i.test(text))
    return {
      says: 'is no measure: what is not known yet is left out, name and all, where it may be',
      isWhole: false,
    };
  const says =
    rangeFault(text, reads) ??
    besideFault(text, reads) ??
    (Object.hasOwn(dimension.units, 'C') ? fahrenheitFault(text) : null) ??
    (Object.hasOwn(dimension.units, 'oz') ? poundsAndOunces(text) : null);
  return says === null ? null : { says, isWhole: true };
}

/** `30-40 A` and `12.6 V to 14.8 V`: the first end may take the unit of the second. */
function rangeFault(text: string, reads: Reads): string | null {
  const [, low = '', high = ''] = /^(.*?\d.*?)\s*(?:\bto\b|[-\u2013\u2014]|\.\.+)\s*(\d.*)$/.exec(text) ?? [];
  const unit = /\D*$/.exec(high)?.[0] ?? '';
  const first = reads(low) ? low : `${low}${unit}`;
  if (low === '' || !reads(first) || !reads(high)) return null;
  return `is a range, and one value is asked for: write the one that holds, ${first} or ${high}`;
}

/** `~40 A`, `about 40 A`, `250 W RMS`, `3.8 Vrms`: a peak is another value, and stays. */
function besideFault(text: string, reads: Reads): string | null {
  const [, before] =
    /^(?:[~\u2248<>\u2264\u2265\u00b1=]|about|approx\.?|approximately|around|ca\.?|circa|some)\s*(.+)$/i.exec(
      text,
    ) ?? [];
  if (before !== undefined && reads(before)) return `has something before its number: write ${before}`;
  const [, behind] =
    /^(.*?)[\s(]*(?:rms|dc|ac|nominal|nom\.?|each|ea\.?|total|continuous|cont\.?)\)?$/i.exec(text) ?? [];
  return behind !== undefined && reads(behind) ? `has a word behind its unit: write ${behind}` : null;
}

/** Degrees of Fahrenheit in those of Celsius, five ninths of what is above 32, by the definition of both scales. */
function fahrenheitFault(text: string): string | null {
  const [, degrees] = /^(-?\d+(?:\.\d+)?)\s*(?:\u00b0|deg\.?)?\s*(?:F|fahrenheit)$/i.exec(text) ?? [];
  if (degrees === undefined) return null;
  return `is in degrees of Fahrenheit: write ${Number((((Number(degrees) - 32) * 5) / 9).toFixed(2))} C`;
}

function poundsAndOunces(text: string): string | null {
  const [, pounds, ounces] =
    /^(\d+)\s*(?:lbs?\.?|pounds?)\s*(\d+(?:\.\d+)?)\s*(?:oz\.?|ounces?)$/i.exec(text) ?? [];
  if (pounds === undefined || ounces === undefined) return null;
  return `has two units: write ${Number((16 * Number(pounds) + Number(ounces)).toPrecision(12))} oz`;
}
